import { z } from 'zod'
import {
  Building,
  Conditions,
  FlowDevice,
  PressureGauge,
  Reading,
  Run,
  UncertaintyInputs,
} from '../../contract/record/index.js'
import { parseWith } from '../../contract/record/parse-record.js'
import { nameField } from '../../contract/record/text-field.js'
import type { UnfinishedTest } from '../../evaluation/work/running-estimate.js'
import { methodById } from '../../methods/index.js'
import { type WhileReading, whileReading } from './while-reading.js'

/** A run while its readings come in. */
export const UnfinishedRequest = z.strictObject({
  method: nameField('test method'),
  building: Building.partial(),
  conditions: Conditions.partial(),
  flowDevice: FlowDevice.optional(),
  pressureGauge: PressureGauge.optional(),
  uncertainty: UncertaintyInputs.optional(),
  run: z.strictObject({
    ...Run.shape,
    readings: z.array(Reading).min(1, { error: 'there are no readings yet' }).max(1000),
  }),
})
export type UnfinishedRequest = z.infer<typeof UnfinishedRequest>

/** What can be said about a run so far, from unchecked input. Throws InputError. */
export function estimateWhileReading(input: unknown): WhileReading {
  const { method, ...unfinished } = parseWith(UnfinishedRequest, input)
  // A field left out of the input is left out of what zod gives, too: it is never there as undefined.
  const state = whileReading(unfinished as UnfinishedTest, methodById(method))
  if (!state) throw new RangeError('a run with a reading has a state')
  return state
}
