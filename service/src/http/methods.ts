import type { RequestHandler, Router } from 'express'
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
    throw new HttpFault(405, `Use ${allow} here`, { headers: { allow } })
  })
}
