import { z } from 'zod'
import { DeviceRange, FlowDevice, PressureGauge } from './record/instruments.js'
import { OwnTarget, type Target } from './record/target.js'
import { dateField, nameField, textField } from './record/text-field.js'

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
  format: z.literal(DEVICE_FORMAT, { error: `it must be "${DEVICE_FORMAT}"` }),
  name: nameField('name of the flow device'),
  notes: textField('notes').optional(),
  calibrations: z.array(Calibration).max(100).optional(),
})
export type LibraryDevice = z.infer<typeof LibraryDevice>

export const GAUGE_FORMAT = 'draughtbook/gauge@1'

/** A pressure gauge of the firm, with its calibrations so far. */
export const LibraryGauge = PressureGauge.omit({ libraryEntry: true }).extend({
  format: z.literal(GAUGE_FORMAT, { error: `it must be "${GAUGE_FORMAT}"` }),
  name: nameField('name of the pressure gauge'),
  notes: textField('notes').optional(),
  calibrations: z
    .array(Calibration.omit({ ranges: true }))
    .max(100)
    .optional(),
})
export type LibraryGauge = z.infer<typeof LibraryGauge>

export const TARGET_FORMAT = 'draughtbook/target@1'

/** A limit the firm works to, such as a client's. */
export const LibraryTarget = z.strictObject({
  format: z.literal(TARGET_FORMAT, { error: `it must be "${TARGET_FORMAT}"` }),
  name: nameField('name of the target'),
  /** Document that sets the limit. */
  source: textField('source of the limit').optional(),
  target: OwnTarget,
})
export type LibraryTarget = z.infer<typeof LibraryTarget>

/** Names an entry of the library in the state it was copied in: `devices/fan-a@3f2a9c1b7d20e5a4`. */
export const entryName = (kind: 'devices' | 'gauges', id: string, version: string): string =>
  `${kind}/${id}@${version}`

/** The part of a device that a record carries: a later change in the library does not change the record. */
export function deviceForRecord(device: LibraryDevice, id: string, version: string): FlowDevice {
  const { format: _format, name: _name, notes: _notes, calibrations: _calibrations, ...copied } = device
  return { ...copied, libraryEntry: entryName('devices', id, version) }
}

/** The part of a gauge that a record carries. */
export function gaugeForRecord(gauge: LibraryGauge, id: string, version: string): PressureGauge {
  const { format: _format, name: _name, notes: _notes, calibrations: _calibrations, ...copied } = gauge
  return { ...copied, libraryEntry: entryName('gauges', id, version) }
}

/** The target of a record; it goes by the entry's name unless it has a label of its own. */
export const targetForRecord = ({ name, target }: LibraryTarget): Target => ({ label: name, ...target })
