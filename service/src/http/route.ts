import { check } from '@draughtbook/shared-calc'
import type { Request, RequestHandler, Response, Router } from 'express'
import { z } from 'zod'
import { HttpFault } from './http-fault.js'

type Handlers = Partial<Record<'get' | 'post' | 'put' | 'delete', RequestHandler | RequestHandler[]>>

/** Serves a path with the given methods; any other method is 405, naming those there are. */
export function serve(router: Router, path: string, handlers: Handlers): void {
  const route = router.route(path)
  // Kept here, because an error on its way out forgets the router it came from.
  route.all((request, response, next) => {
    response.locals.route = request.baseUrl + path
    next()
  })
  for (const [method, handler] of Object.entries(handlers)) {
    const list = Array.isArray(handler) ? handler : [handler]
    route[method as keyof Handlers](...list)
  }
  const names = Object.keys(handlers).map((name) => name.toUpperCase())
  const allow = [...(names.includes('GET') ? ['HEAD'] : []), ...names].sort().join(', ')
  route.all(() => {
    throw new HttpFault(405, `Use ${allow.split(', ').join(' or ')} here`, { headers: { allow } })
  })
}

/** Answers with JSON that is already written: express would look for its length, type and version again. */
export function sendJson(response: Response, json: Uint8Array | string): void {
  response.setHeader('content-type', 'application/json; charset=utf-8')
  response.setHeader('content-length', Buffer.byteLength(json))
  response.end(json)
}

/** Checks the query against a schema; an unknown or wrong parameter is 400, named. */
export function queryOf<T>(request: Request, schema: z.ZodType<T>): T {
  const hasNone = !request.url.includes('?')
  if (hasNone && ofNoQuery.has(schema)) return ofNoQuery.get(schema) as T
  const result = check(schema, request.query)
  if (result.success) {
    if (hasNone) ofNoQuery.set(schema, result.data)
    return result.data
  }
  throw new HttpFault(400, 'The query cannot be used', {
    errors: result.error.issues.map(({ path, message }) => ({ path: path.map(String).join('.'), message })),
  })
}

/** What each schema makes of no query at all, as most requests have it: checked once. */
const ofNoQuery = new WeakMap<z.ZodType, unknown>()

/** A switch: `?trace=1`. */
export const flag = z
  .enum(['0', '1'], { error: 'must be 0 or 1' })
  .optional()
  .transform((value) => value === '1')
