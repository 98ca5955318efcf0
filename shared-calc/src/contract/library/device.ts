import { z } from 'zod'
import { DeviceRange, FlowDevice } from '../record/instruments.js'
import { dateField, nameField, textField } from '../record/text-field.js'

export const DEVICE_FORMAT = 'draughtbook/device@1'

/** One calibration of the past, with the ranges it gave. */
export const Calibration = z.strictObject({
  date: dateField('date of the calibration'),
  due: dateField('date the next calibration was due').optional(),
  certificate: textField('number of the certificate').optional(),
  laboratory: textField('calibration laboratory').optional(),
  ranges: z.array(DeviceRange).max(50).optional(),
})
export type Calibration = z.infer<typeof Calibration>

/** A flow device of the firm: what a record takes over, and its calibrations so far. */
export const LibraryDevice = FlowDevice.omit({ libraryEntry: true }).extend({
  format: z.literal(DEVICE_FORMAT, { error: `format must be "${DEVICE_FORMAT}"` }),
  name: nameField('name of the flow device'),
  notes: textField('notes').optional(),
  calibrations: z.array(Calibration).max(100).optional(),
})
export type LibraryDevice = z.infer<typeof LibraryDevice>
