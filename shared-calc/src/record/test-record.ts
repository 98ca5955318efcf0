import { z } from 'zod'
import { Building } from './building.js'
import { Conditions } from './conditions.js'
import { FlowDevice, PressureGauge } from './instruments.js'
import { Run } from './runs.js'
import { Target } from './target.js'
import { TestDetails } from './test-details.js'

export const RECORD_FORMAT = 'draughtbook/record@1'

/** What was built, measured and asked: everything an evaluation depends on. Source: record-format of this project. */
export const TestRecord = z
  .strictObject({
    format: z.literal(RECORD_FORMAT, { error: `format must be "${RECORD_FORMAT}"` }),
    building: Building,
    test: TestDetails,
    conditions: Conditions,
    pressureGauge: PressureGauge.optional(),
    flowDevice: FlowDevice.optional(),
    runs: z
      .array(Run)
      .min(1, { error: 'the record has no run' })
      .max(2, { error: 'the record has more than two runs' }),
    target: Target.optional(),
  })
  .superRefine((record, context) => {
    const [first, second] = record.runs
    if (first && second && first.direction === second.direction)
      context.addIssue({
        code: 'custom',
        path: ['runs', 1, 'direction'],
        message: `both runs are marked ${second.direction}: one run per direction`,
      })
  })
export type TestRecord = z.infer<typeof TestRecord>
