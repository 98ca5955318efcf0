import { z } from 'zod'
import { Building } from './building.js'
import { anyOf } from './choices.js'
import { Conditions } from './conditions.js'
import { FlowDevice, PressureGauge, Thermometer } from './instruments.js'
import { LeakLog } from './leaks.js'
import { Plan } from './plan.js'
import { Preparation } from './preparation.js'
import { Run } from './runs.js'
import { TakeOff } from './take-off.js'
import { Target } from './target.js'
import { TestDetails } from './test-details.js'
import { UncertaintyInputs } from './uncertainty.js'
import { RECORD_FORMATS, refuseNewerParts } from './versions.js'

export { formatNeeded, RECORD_FORMAT, RECORD_FORMAT_2, RECORD_FORMAT_3, RECORD_FORMATS } from './versions.js'

const knownFormats = anyOf(RECORD_FORMATS)

/** What was built, measured and asked: everything an evaluation depends on. Source: record-format of this project. */
export const TestRecord = z
  .strictObject({
    format: z.enum(RECORD_FORMATS, {
      error: ({ input }) =>
        typeof input === 'string' && input.startsWith('draughtbook/record@')
          ? `${JSON.stringify(input.slice(0, 40))} is not known here; a later Draughtbook may have written it. This one reads ${knownFormats}`
          : `it must be ${knownFormats}`,
    }),
    building: Building,
    test: TestDetails,
    conditions: Conditions,
    pressureGauge: PressureGauge.optional(),
    flowDevice: FlowDevice.optional(),
    thermometer: Thermometer.optional(),
    runs: z
      .array(Run)
      .min(1, { error: 'the record has no runs' })
      .max(2, { error: 'the record has more than two runs' }),
    target: Target.optional(),
    takeOff: TakeOff.optional().meta({ title: 'take-off' }),
    plan: Plan.optional(),
    preparation: Preparation.optional(),
    leaks: LeakLog.optional(),
    uncertainty: UncertaintyInputs.optional(),
  })
  .superRefine(refuseNewerParts)
  .superRefine((record, context) => {
    const { lossArea_m2: loss, envelopeArea_m2: envelope } = record.building
    // The loss area leaves out the lowest floor and walls to heated neighbours: it is a part of the envelope.
    if (loss !== undefined && envelope !== undefined && loss > envelope)
      context.addIssue({
        code: 'custom',
        path: ['building', 'lossArea_m2'],
        message: `loss area without the lowest floor is ${loss} m², more than the envelope area of ${envelope} m²: correct one of them`,
      })
    const [first, second] = record.runs
    if (first && second && first.direction === second.direction)
      context.addIssue({
        code: 'custom',
        path: ['runs', 1, 'direction'],
        message: `both runs are marked ${second.direction}; enter one run per direction`,
      })
  })
export type TestRecord = z.infer<typeof TestRecord>
