import { z } from 'zod'
import { anyOf, windPlaces } from './choices.js'
import { numberField } from './number-field.js'
import { plausibleRanges, pressureSlips, temperatureSlips } from './plausible.js'

const humidity = (term: string) => numberField({ term, unit: '1' }, 0, 1)
const temperature = (field: 'indoorTemperature_C' | 'outdoorTemperature_C', lowest: number) =>
  numberField(plausibleRanges[`conditions.${field}`], lowest, 60, temperatureSlips)

export const Conditions = z.strictObject({
  indoorTemperature_C: temperature('indoorTemperature_C', -30),
  outdoorTemperature_C: temperature('outdoorTemperature_C', -60),
  barometricPressure_Pa: numberField(
    plausibleRanges['conditions.barometricPressure_Pa'],
    45_000,
    115_000,
    pressureSlips,
  ).optional(),
  indoorRelativeHumidity: humidity('indoor relative humidity').optional(),
  outdoorRelativeHumidity: humidity('outdoor relative humidity').optional(),
  windSpeed_m_s: numberField(plausibleRanges['conditions.windSpeed_m_s'], 0, 60).optional(),
  windAt: z.enum(windPlaces, { error: `windAt must be ${anyOf(windPlaces)}` }).optional(),
  beaufort: z.int({ error: 'wind force must be a whole number, Beaufort 0 to 12' }).min(0).max(12).optional(),
})
export type Conditions = z.infer<typeof Conditions>
