import type { Request, RequestHandler } from 'express'
import { HttpFault } from '../http/http-fault.js'
import { isLoopback, isOpen, type Settings } from '../settings/settings.js'

/**
 * Which pages may call. Pages of our own origin may; those of listed origins may, with CORS headers; any other page is
 * refused, even for requests that a browser sends without asking first. Programs send no Origin and are not concerned.
 * Source: Fetch standard, 3.2 (CORS protocol).
 */
export function checkOrigin(settings: Settings): RequestHandler {
  const listed = new Set(settings.origins)
  return (request, response, next) => {
    const { origin } = request.headers
    // The first to say so; whoever adds to it later uses `vary`.
    response.setHeader('vary', 'Origin')
    if (origin === undefined || isOwn(origin, request, settings)) return next()
    if (!listed.has(origin))
      throw new HttpFault(403, 'Pages from this origin may not call the service', {
        detail: 'to allow it, start the service with --origin and its address',
      })
    response.set({
      'access-control-allow-origin': origin,
      'access-control-expose-headers': 'ETag, Location, Retry-After, X-Request-Id, Content-Disposition',
      'cross-origin-resource-policy': 'cross-origin',
    })
    if (request.method !== 'OPTIONS') return next()
    response
      .status(204)
      .set({
        'access-control-allow-methods': 'GET, HEAD, POST, PUT, DELETE',
        'access-control-allow-headers': 'Authorization, Content-Type, If-Match, If-None-Match, X-Request-Id',
        'access-control-allow-private-network': 'true',
        'access-control-max-age': '600',
      })
      .end()
  }
}

function isOwn(origin: string, request: Request, { publicUrl }: Settings): boolean {
  const own =
    publicUrl === undefined ? `${request.protocol}://${request.headers.host}` : new URL(publicUrl).origin
  return origin === own
}

/**
 * Where the service is open to this machine, a page elsewhere could point its own name at 127.0.0.1 and so become "our
 * own origin". The host asked for must therefore be this machine's.
 */
export function checkHost(settings: Settings): RequestHandler {
  if (!isOpen(settings)) return (_request, _response, next) => next()
  const more = settings.publicUrl === undefined ? undefined : new URL(settings.publicUrl).host
  return (request, _response, next) => {
    const host = request.headers.host ?? ''
    if (isLoopback(host.replace(/:\d+$/, '')) || host === more) return next()
    throw new HttpFault(421, 'The service does not use this host name', {
      detail: 'use localhost, or start the service with --public-url and the address in use',
    })
  }
}
