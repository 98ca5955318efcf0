import { z } from 'zod'
import { numberField } from './number-field.js'
import { plausibleRanges } from './plausible.js'
import { dateField, nameField, textField } from './text-field.js'

/** Which entry of the firm's library was copied, and its state: a record carries the copy. */
const libraryEntry = textField('entry of the library').optional()

const relativeAccuracy = (term: string) => numberField({ term, unit: '1' }, 0, 1)

export const PressureGauge = z.strictObject({
  libraryEntry,
  serial: textField('serial number of the pressure gauge').optional(),
  calibrationDue: dateField('calibration due date of the pressure gauge').optional(),
  /** Largest error, ± Pa and ± share of the reading: the larger of the two counts (from record@3 on). */
  accuracy_Pa: numberField({ term: 'accuracy of the pressure gauge', unit: 'Pa' }, 0, 100).optional(),
  accuracy_relative: relativeAccuracy('accuracy of the pressure gauge, share of the reading').optional(),
})
export type PressureGauge = z.infer<typeof PressureGauge>

const devicePressure = (term: string) => numberField({ term, unit: 'Pa' }, 0, 10_000)
const deviceFlow = (term: string) => numberField({ term, unit: 'm³/h' }, 0, 1e6)

/** A calibrated range: q = coefficient · |Δp_d|^exponent in m³/h at the device's reference density. */
export const DeviceRange = z.strictObject({
  label: nameField('label of the range'),
  coefficient: numberField({ term: 'coefficient of the range', unit: 'm³/(h·Paᵐ)' }, 1e-6, 1e6).optional(),
  exponent: numberField({ term: 'exponent of the range', unit: '1' }, 0.1, 2).optional(),
  minimumPressure_Pa: devicePressure('lowest device pressure of the range').optional(),
  maximumPressure_Pa: devicePressure('highest device pressure of the range').optional(),
  minimumFlow_m3_h: deviceFlow('lowest flow of the range').optional(),
  maximumFlow_m3_h: deviceFlow('highest flow of the range').optional(),
})
export type DeviceRange = z.infer<typeof DeviceRange>

export const FlowDevice = z.strictObject({
  libraryEntry,
  serial: textField('serial number of the flow device').optional(),
  calibrationDue: dateField('calibration due date of the flow device').optional(),
  referenceDensity_kg_m3: numberField(
    plausibleRanges['flowDevice.referenceDensity_kg_m3'],
    0.8,
    1.6,
  ).optional(),
  ranges: z.array(DeviceRange).max(50).optional(),
  /** Largest error, ± share of the flow and ± m³/h: the larger of the two counts (from record@3 on). */
  accuracy_relative: relativeAccuracy('accuracy of the flow device, share of the flow').optional(),
  accuracy_m3_h: numberField({ term: 'accuracy of the flow device', unit: 'm³/h' }, 0, 1e5).optional(),
})
export type FlowDevice = z.infer<typeof FlowDevice>

/** The thermometer of both temperatures (from record@3 on). */
export const Thermometer = z.strictObject({
  libraryEntry,
  serial: textField('serial number of the thermometer').optional(),
  calibrationDue: dateField('calibration due date of the thermometer').optional(),
  /** Largest error, ± K. */
  accuracy_K: numberField({ term: 'accuracy of the thermometer', unit: 'K' }, 0, 20).optional(),
})
export type Thermometer = z.infer<typeof Thermometer>
