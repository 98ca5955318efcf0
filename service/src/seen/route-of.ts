import type { Response } from 'express'

/**
 * The pattern of the route that answered, such as `/v1/library/:kind`. Addresses as called are never shown: they may
 * hold anything, and would give the metrics a label for each.
 */
export function routeOf(response: Response): string {
  const { route } = response.locals
  return typeof route === 'string' ? route : 'other'
}
