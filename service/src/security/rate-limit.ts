import type { RequestHandler } from 'express'
import { ipKeyGenerator, rateLimit } from 'express-rate-limit'
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

/** Refused requests of one address; comes before authentication. */
export function limitRefusals(settings: Settings): RequestHandler[] {
  if (isOpen(settings)) return []
  return [
    rateLimit({
      ...shared,
      identifier: 'refusals',
      limit: REFUSALS,
      standardHeaders: false,
      skipSuccessfulRequests: true,
      requestWasSuccessful: (_request, response) => response.statusCode !== 401,
      keyGenerator: (request) => ipKeyGenerator(request.ip ?? ''),
      handler: () => {
        throw tooMany(60)
      },
    }),
  ]
}

/** `"caller"; r=0; t=37` → 37. */
const secondsLeft = (header: unknown): number => Number(/t=(\d+)/.exec(String(header))?.[1] ?? 60)
