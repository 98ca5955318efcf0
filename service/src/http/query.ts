import type { Request } from 'express'
import { z } from 'zod'
import { HttpFault } from './http-fault.js'

/** Checks the query against a schema; an unknown or wrong parameter is 400, named. */
export function queryOf<T>(request: Request, schema: z.ZodType<T>): T {
  const result = schema.safeParse(request.query)
  if (result.success) return result.data
  throw new HttpFault(400, 'The query cannot be used', {
    errors: result.error.issues.map(({ path, message }) => ({ path: path.map(String).join('.'), message })),
  })
}

/** A switch: `?trace=1`. */
export const flag = z
  .enum(['0', '1'], { error: 'must be 0 or 1' })
  .optional()
  .transform((value) => value === '1')
