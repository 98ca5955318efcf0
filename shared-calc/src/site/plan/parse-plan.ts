import { InputError } from '../../contract/problem.js'
import { parseRecord } from '../../contract/record/index.js'
import { parseWith, saysRecord } from '../../contract/record/parse-with.js'
import { PlanRequest, planOfRecord } from './request.js'

/** A plan request from unchecked input: a request itself, or a record that holds a plan. Throws InputError. */
export function parsePlan(input: unknown): PlanRequest {
  if (!saysRecord(input)) return parseWith(PlanRequest, input)
  const request = planOfRecord(parseRecord(input))
  if (request) return request
  throw new InputError([{ path: 'plan', message: 'the record has no plan' }])
}
