import { randomUUID } from 'node:crypto'
import type { RequestHandler } from 'express'

/** Names each request: by the id the caller gave, when it is harmless in a log, else by our own. */
export const requestId: RequestHandler = (request, response, next) => {
  const given = request.get('x-request-id') ?? ''
  const id = /^[\w.-]{1,64}$/.test(given) ? given : randomUUID()
  response.locals.requestId = id
  response.set('x-request-id', id)
  next()
}
