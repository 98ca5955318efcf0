import { randomUUID } from 'node:crypto'
import type { RequestHandler, Response } from 'express'
import type { Logger } from 'pino'
import type { Caller } from '../security/caller.js'

/** One line per call: who did what, to which record (by digest), and the outcome. No address, query or body. */
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

/** Names each request: by the id the caller gave, when it is harmless in a log, else by our own. */
export const requestId: RequestHandler = (request, response, next) => {
  const given = request.get('x-request-id') ?? ''
  const id = /^[\w.-]{1,64}$/.test(given) ? given : randomUUID()
  response.locals.requestId = id
  response.setHeader('x-request-id', id)
  next()
}

/**
 * The pattern of the route that answered, such as `/v1/library/:kind`. Addresses as called are never shown: they may
 * hold anything, and would give the metrics a label for each.
 */
export function routeOf(response: Response): string {
  const { route } = response.locals
  return typeof route === 'string' ? route : 'other'
}
