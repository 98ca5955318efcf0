import type { Request, RequestHandler, Response } from 'express'
import { ipKeyGenerator, MemoryStore, rateLimit } from 'express-rate-limit'
import { HttpFault } from '../http/http-fault.js'
import { isOpen, type Settings } from '../settings/settings.js'
import type { Caller } from './caller.js'

const MINUTE_MS = 60_000
/** Refused tokens a minute from one address. Guessing 256 bits is hopeless anyway; this keeps the log readable. */
const REFUSALS = 30

const tooMany = (seconds: number) =>
  new HttpFault(429, 'Too many requests', {
    kind: 'too-many',
    headers: { 'retry-after': String(seconds) },
  })

const shared = {
  windowMs: MINUTE_MS,
  standardHeaders: 'draft-8',
  legacyHeaders: false,
  // Counted in this process: with several replicas each allows the rate. The balancer may limit the whole.
} as const

/** Requests of one caller; comes after authentication. */
export function limitCallers(settings: Settings): RequestHandler[] {
  if (settings.rate === 0 || isOpen(settings)) return []
  return [
    rateLimit({
      ...shared,
      identifier: 'caller',
      limit: settings.rate,
      keyGenerator: (_request, response) => (response.locals.caller as Caller).key,
      handler: (_request, response) => {
        throw tooMany(secondsLeft(response.getHeader('ratelimit')))
      },
    }),
  ]
}

/**
 * Counts what was refused with 401, by address. Only answers that were sent count: a request that is given up says nothing of
 * its token. Whoever has a good token is not held to it.
 */
export class Refusals {
  private readonly store = new MemoryStore()

  constructor() {
    this.store.init({ windowMs: MINUTE_MS } as Parameters<MemoryStore['init']>[0])
  }

  /** Throws 429 instead of another 401 for an address that had too many. */
  async check(request: Request, response: Response): Promise<void> {
    const key = ipKeyGenerator(request.ip ?? '')
    const before = await this.store.get(key)
    if (before && before.totalHits >= REFUSALS) throw tooMany(60)
    response.once('finish', () => {
      if (response.statusCode === 401) void this.store.increment(key)
    })
  }
}

/** `"caller"; r=0; t=37` → 37. */
const secondsLeft = (header: unknown): number => Number(/t=(\d+)/.exec(String(header))?.[1] ?? 60)
