import type { RequestHandler } from 'express'
import { overloaded } from '../jobs/pool.js'

/** Made once: when there are most of them, there is least time to make them. */
const TOO_MANY = overloaded()

/** What the running service is doing. */
export class RunningState {
  /** True from the moment a stop was asked for. */
  stopping = false
  inHand = 0

  constructor(private readonly most: number) {}

  /** Counts requests in hand and turns away more than can be served in reasonable time. */
  readonly admit: RequestHandler = (_request, response, next) => {
    if (this.inHand >= this.most) return next(TOO_MANY)
    this.inHand++
    response.once('close', () => void this.inHand--)
    next()
  }
}
