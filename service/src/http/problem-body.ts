import { InputError } from '@draughtbook/shared-calc'
import { z } from 'zod'
import { JsonError } from '../json/read-json.js'
import { HttpFault } from './http-fault.js'
import { listed } from './listed.js'

/** Body of every error answer. Source: RFC 9457, 3. */
export const ProblemBody = z.strictObject({
  type: z.string(),
  title: z.string(),
  status: z.int(),
  detail: z.string().optional(),
  instance: z.string().optional(),
  errors: z
    .array(z.strictObject({ path: z.string(), cell: z.string().optional(), message: z.string() }))
    .optional(),
})
export type ProblemBody = z.infer<typeof ProblemBody>

/** Any error as the fault it is answered with. Nothing of an unexpected one is shown. */
export function faultOf(error: unknown): HttpFault {
  if (error instanceof HttpFault) return error
  if (error instanceof JsonError)
    return new HttpFault(400, 'The body is not valid JSON', {
      kind: 'malformed-json',
      errors: error.problems,
    })
  if (error instanceof InputError)
    return new HttpFault(422, 'The input cannot be used', { kind: 'unusable-input', errors: error.problems })
  return bodyFault(error) ?? new HttpFault(500, 'The service has a bug', { kind: 'fault' })
}

/** What express raises: an error with a status of its own. */
function bodyFault(error: unknown): HttpFault | undefined {
  if (!(error instanceof Error) || !('status' in error) || typeof error.status !== 'number') return undefined
  const { status } = error
  return status >= 400 && status < 500 ? new HttpFault(status, 'The request cannot be read') : undefined
}

/** @param instance - what a person can quote when asking about this answer */
export function problemBody(fault: HttpFault, instance?: string): ProblemBody {
  const { kind, detail, errors } = fault.details
  return {
    type: kind ? `/api#${kind}` : 'about:blank',
    title: fault.title,
    status: fault.status,
    ...(detail !== undefined && { detail }),
    ...(instance !== undefined && { instance }),
    ...(errors && { errors: listed(errors) }),
  }
}
