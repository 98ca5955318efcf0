import { z } from 'zod'
import { PressureGauge } from '../record/instruments.js'
import { nameField, textField } from '../record/text-field.js'
import { Calibration } from './device.js'

export const GAUGE_FORMAT = 'draughtbook/gauge@1'

/** A pressure gauge of the firm, with its calibrations so far. */
export const LibraryGauge = PressureGauge.omit({ libraryEntry: true }).extend({
  format: z.literal(GAUGE_FORMAT, { error: `format must be "${GAUGE_FORMAT}"` }),
  name: nameField('name of the pressure gauge'),
  notes: textField('notes').optional(),
  calibrations: z
    .array(Calibration.omit({ ranges: true }))
    .max(100)
    .optional(),
})
export type LibraryGauge = z.infer<typeof LibraryGauge>
