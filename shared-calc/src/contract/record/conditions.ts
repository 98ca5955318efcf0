import { z } from 'zod'
import { numberField } from './number-field.js'

const humidity = (term: string) => numberField({ term, unit: '1' }, 0, 1)

export const Conditions = z.strictObject({
  indoorTemperature_C: numberField({ term: 'indoor temperature', unit: '°C' }, -30, 60),
  outdoorTemperature_C: numberField({ term: 'outdoor temperature', unit: '°C' }, -60, 60),
  barometricPressure_Pa: numberField({ term: 'barometric pressure', unit: 'Pa' }, 45_000, 115_000).optional(),
  indoorRelativeHumidity: humidity('indoor relative humidity').optional(),
  outdoorRelativeHumidity: humidity('outdoor relative humidity').optional(),
  windSpeed_m_s: numberField({ term: 'wind speed', unit: 'm/s' }, 0, 60).optional(),
  windAt: z
    .enum(['ground', 'meteorological'], { error: 'windAt must be "ground" or "meteorological"' })
    .optional(),
  beaufort: z.int({ error: 'wind force must be a whole number, Beaufort 0 to 12' }).min(0).max(12).optional(),
})
export type Conditions = z.infer<typeof Conditions>
