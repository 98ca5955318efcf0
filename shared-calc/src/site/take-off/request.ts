import { z } from 'zod'
import { InputError } from '../../contract/problem.js'
import { parseRecord, TakeOff } from '../../contract/record/index.js'
import { parseWith, saysRecord } from '../../contract/record/parse-record.js'
import { nameField } from '../../contract/record/text-field.js'

export const TAKE_OFF_FORMAT = 'draughtbook/take-off@1'

/** A take-off by itself, before there is a test. */
export const TakeOffRequest = z.strictObject({
  format: z.literal(TAKE_OFF_FORMAT, { error: `format must be "${TAKE_OFF_FORMAT}"` }),
  name: nameField('building name'),
  takeOff: TakeOff,
})
export type TakeOffRequest = z.infer<typeof TakeOffRequest>

/** A take-off from unchecked input: a request itself, or a record or plan that holds one. Throws InputError. */
export function parseTakeOff(input: unknown): TakeOffRequest {
  if (!saysRecord(input)) return parseWith(TakeOffRequest, input)
  const { building, takeOff } = parseRecord(input)
  if (takeOff) return { format: TAKE_OFF_FORMAT, name: building.name, takeOff }
  throw new InputError([{ path: 'takeOff', message: 'the record has no take-off' }])
}
