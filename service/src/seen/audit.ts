import type { RequestHandler } from 'express'
import type { Logger } from 'pino'
import type { Caller } from '../security/caller.js'
import { routeOf } from './route-of.js'

/** One line per call: who did what, to which record (by digest), with what end. Neither address, query nor body. */
export function audit(log: Logger): RequestHandler {
  return (request, response, next) => {
    const start = process.hrtime.bigint()
    response.once('close', () => {
      const { requestId, caller, digest, entry } = response.locals as {
        requestId?: string
        caller?: Caller
        digest?: string
        entry?: string
      }
      log.info({
        audit: true,
        requestId,
        who: caller?.name ?? 'unknown',
        what: `${request.method} ${routeOf(response)}`,
        ...(entry !== undefined && { entry }),
        ...(digest !== undefined && { digest }),
        status: response.writableFinished ? response.statusCode : 499,
        ms: Number(process.hrtime.bigint() - start) / 1e6,
      })
    })
    next()
  }
}
