import type { NextFunction, Request, RequestHandler, Response } from 'express'
import { clientGone, overloaded } from '../http/http-fault.js'
import type { Caller } from '../security/caller.js'
import { Tally } from './tally.js'
import { WaitingLine, type WaitingLineBounds } from './waiting-line.js'

/** Made once: when there are most of them, there is least time to make them. */
const TOO_MANY = overloaded()

/** Largest body that waits for a place: what waits is kept in memory. */
const SMALL_BYTES = 16 * 1024

/** What the running service is doing. */
export class RunningState {
  /** True from the moment a stop was asked for. */
  stopping = false
  /** What the start still waits for; empty once the service is ready. */
  readonly startingUp = new Set<string>()
  inHand = 0
  private readonly byCaller = new Tally()
  private readonly line: WaitingLine

  /**
   * @param most - most requests in hand at one time
   * @param mostOfOne - most of them for one caller, so that one alone cannot take all places
   * @param waiting - how many small requests may wait for a place, and how long; left out: none
   */
  constructor(
    private readonly most: number,
    private readonly mostOfOne = most,
    waiting: WaitingLineBounds = { most: 0, mostOfOne: 0, wait_ms: 0 },
  ) {
    this.line = new WaitingLine(waiting)
  }

  /**
   * Gives a request its place, and turns away more than can be served in reasonable time. Comes once the body has arrived: a
   * sender that is slow takes no place. Small requests wait a moment for a place: most bursts are over by then, and to turn one away
   * costs half as much as to serve it.
   */
  readonly admit: RequestHandler = (request, response, next) => {
    // It has disconnected meanwhile; nothing would give its place back.
    if (response.destroyed) return next(clientGone())
    const { key } = (response.locals.caller ?? { key: '' }) as Pick<Caller, 'key'>
    if (this.hasPlace(key)) return this.enter(key, response, next)
    const enter = () => this.enter(key, response, next)
    const turnAway = () => next(response.destroyed ? clientGone() : TOO_MANY)
    if (!isSmall(request) || !this.line.join({ key, enter, turnAway })) turnAway()
  }

  /** How many wait for a place. */
  get waiting(): number {
    return this.line.length
  }

  /** Callers that go on using a connection are told when it will end: the next request on it would be lost. */
  readonly sayWhenLast: RequestHandler = (_request, response, next) => {
    if (this.stopping) response.setHeader('connection', 'close')
    next()
  }

  private hasPlace(key: string): boolean {
    return this.inHand < this.most && this.byCaller.of(key) < this.mostOfOne
  }

  private enter(key: string, response: Response, next: NextFunction): void {
    if (response.destroyed) {
      next(clientGone())
      return
    }
    this.inHand++
    this.byCaller.add(key)
    response.once('close', () => this.leave(key))
    next()
  }

  private leave(key: string): void {
    this.inHand--
    this.byCaller.remove(key)
    this.line.letIn({ any: () => this.inHand < this.most, for: (waiting) => this.hasPlace(waiting) })
  }
}

const isSmall = ({ body }: Request): boolean => Buffer.isBuffer(body) && body.length <= SMALL_BYTES
