import { z } from 'zod'
import { refuseOtherKind } from '../../contract/file-kind.js'
import { InputError } from '../../contract/problem.js'
import {
  Building,
  Plan,
  parseRecord,
  TakeOff,
  Target,
  TestDetails,
  type TestRecord,
} from '../../contract/record/index.js'
import { parseWith, saysRecord } from '../../contract/record/parse-record.js'
import { nameField } from '../../contract/record/text-field.js'

export const PLAN_FORMAT = 'draughtbook/plan@1'

/** What a plan is worked out from: the parts of a record that are known before there are readings. */
export const PlanRequest = z.strictObject({
  format: z.literal(PLAN_FORMAT, { error: `it must be "${PLAN_FORMAT}"` }),
  building: Building,
  method: nameField('test method'),
  preparation: TestDetails.shape.preparation,
  target: Target.optional(),
  takeOff: TakeOff.optional(),
  plan: Plan,
})
export type PlanRequest = z.infer<typeof PlanRequest>

/** The plan that a record@2 holds, as a request of its own; undefined where it holds none. */
export function planOfRecord(record: TestRecord): PlanRequest | undefined {
  const { building, test, target, takeOff, plan } = record
  if (!plan) return undefined
  return {
    format: PLAN_FORMAT,
    building,
    method: test.method,
    ...(test.preparation && { preparation: test.preparation }),
    ...(target && { target }),
    ...(takeOff && { takeOff }),
    plan,
  }
}

/** A plan request from unchecked input: a request itself, or a record that holds a plan. Throws InputError. */
export function parsePlan(input: unknown): PlanRequest {
  if (!saysRecord(input)) {
    refuseOtherKind(input, 'plan')
    return parseWith(PlanRequest, input)
  }
  const request = planOfRecord(parseRecord(input))
  if (request) return request
  throw new InputError([{ path: 'plan', message: 'the record has no plan' }])
}
