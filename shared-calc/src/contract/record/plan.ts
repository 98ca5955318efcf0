import { z } from 'zod'
import { anyOf, windPlaces } from './choices.js'
import { FlowDevice, PressureGauge } from './instruments.js'
import { numberField } from './number-field.js'
import { Direction } from './runs.js'
import { dateField, nameField } from './text-field.js'

const temperature = (term: string) => numberField({ term, unit: '°C' }, -60, 60)

/** Weather to expect on the day. */
export const Forecast = z.strictObject({
  indoorTemperature_C: temperature('expected indoor temperature').optional(),
  outdoorTemperature_C: temperature('forecast outdoor temperature').optional(),
  windSpeed_m_s: numberField({ term: 'forecast wind speed', unit: 'm/s' }, 0, 60).optional(),
  windAt: z.enum(windPlaces, { error: `windAt must be ${anyOf(windPlaces)}` }).optional(),
  beaufort: z.int({ error: 'wind force must be a whole number, Beaufort 0 to 12' }).min(0).max(12).optional(),
})
export type Forecast = z.infer<typeof Forecast>

/** A flow device with the name by which the firm knows it. */
export const PlannedDevice = FlowDevice.extend({ name: nameField('name of the flow device') })
export type PlannedDevice = z.infer<typeof PlannedDevice>

export const PlannedGauge = PressureGauge.extend({ name: nameField('name of the pressure gauge') })
export type PlannedGauge = z.infer<typeof PlannedGauge>

/** What is planned for a test: the day, the weather, and the devices to choose from. */
export const Plan = z.strictObject({
  day: dateField('day of the test').optional(),
  directions: z
    .array(Direction)
    .min(1, { error: 'the plan has no direction; choose at least one' })
    .max(2)
    .refine((all) => new Set(all).size === all.length, { error: 'each direction can be planned only once' })
    .optional(),
  /** Zero-flow pressure to expect, or as read on site before the first run. */
  zeroFlowPressure_Pa: numberField(
    { term: 'zero-flow pressure difference', unit: 'Pa' },
    -200,
    200,
  ).optional(),
  forecast: Forecast.optional(),
  devices: z.array(PlannedDevice).max(50).optional(),
  gauges: z.array(PlannedGauge).max(50).optional(),
})
export type Plan = z.infer<typeof Plan>
