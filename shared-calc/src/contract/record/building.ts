import { z } from 'zod'
import { anyOf, volumeBases } from './choices.js'
import { numberField } from './number-field.js'
import { plausibleRanges } from './plausible.js'
import { nameField, textField } from './text-field.js'

export const VolumeBasis = z.enum(volumeBases, { error: `volume basis must be ${anyOf(volumeBases)}` })
export type VolumeBasis = z.infer<typeof VolumeBasis>

const area = (field: 'envelopeArea_m2' | 'lossArea_m2' | 'floorArea_m2') =>
  numberField(plausibleRanges[`building.${field}`], 1, 1e7)

export const Building = z.strictObject({
  name: nameField('building name'),
  site: textField('site').optional(),
  address: textField('address').optional(),
  volume_m3: numberField(plausibleRanges['building.volume_m3'], 1, 1e7).optional(),
  volumeBasis: VolumeBasis.optional(),
  volumeUncertainty_m3: numberField(
    { term: 'standard uncertainty of the volume', unit: 'm³' },
    0,
    1e6,
  ).optional(),
  envelopeArea_m2: area('envelopeArea_m2').optional(),
  /** Area through which heat is lost, without the lowest floor (from record@3 on). Source: French FAQ RE2020 no. 134 (read). */
  lossArea_m2: area('lossArea_m2').optional(),
  floorArea_m2: area('floorArea_m2').optional(),
  height_m: numberField(plausibleRanges['building.height_m'], 0.5, 1000).optional(),
  altitude_m: numberField(plausibleRanges['building.altitude_m'], -500, 6000).optional(),
  largeBuilding: nameField('reason for treating the building as large').optional(),
})
export type Building = z.infer<typeof Building>
