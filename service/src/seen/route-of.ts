import type { Request, Response } from 'express'

/**
 * The pattern of the route that answered, such as `/v1/library/:kind`. Addresses as called are never shown: they may
 * hold anything, and would give the metrics a label for each.
 */
export function routeOf(request: Request, response: Response): string {
  const pattern: unknown = response.locals.route ?? request.route?.path
  return typeof pattern === 'string' ? `${request.baseUrl}${pattern}` : 'other'
}
