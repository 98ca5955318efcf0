import type { RequestHandler } from 'express'
import { clientGone, overloaded } from '../http/http-fault.js'
import type { Caller } from '../security/caller.js'

/** Made once: when there are most of them, there is least time to make them. */
const TOO_MANY = overloaded()

/** What the running service is doing. */
export class RunningState {
  /** True from the moment a stop was asked for. */
  stopping = false
  /** What the start still waits for; empty once the service is ready. */
  readonly startingUp = new Set<string>()
  inHand = 0
  private readonly byCaller = new Map<string, number>()

  /**
   * @param most - most requests in hand at one time
   * @param mostOfOne - most of them for one caller, so that one alone cannot take all places
   */
  constructor(
    private readonly most: number,
    private readonly mostOfOne = most,
  ) {}

  /**
   * Gives a request its place, and turns away more than can be served in reasonable time. Comes once the body has arrived: a
   * sender that is slow takes no place.
   */
  readonly admit: RequestHandler = (_request, response, next) => {
    // It has disconnected meanwhile; nothing would give its place back.
    if (response.destroyed) return next(clientGone())
    const { key } = (response.locals.caller ?? { key: '' }) as Pick<Caller, 'key'>
    const own = this.byCaller.get(key) ?? 0
    if (this.inHand >= this.most || own >= this.mostOfOne) return next(TOO_MANY)
    this.inHand++
    this.byCaller.set(key, own + 1)
    response.once('close', () => this.leave(key))
    next()
  }

  /** Callers that go on using a connection are told when it will end: the next request on it would be lost. */
  readonly sayWhenLast: RequestHandler = (_request, response, next) => {
    if (this.stopping) response.setHeader('connection', 'close')
    next()
  }

  private leave(key: string): void {
    this.inHand--
    const own = (this.byCaller.get(key) ?? 1) - 1
    if (own > 0) this.byCaller.set(key, own)
    else this.byCaller.delete(key)
  }
}
