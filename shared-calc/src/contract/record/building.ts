import { z } from 'zod'
import { numberField } from './number-field.js'
import { nameField, textField } from './text-field.js'

export const VolumeBasis = z.enum(['net', 'overall internal'], {
  error: 'volume basis must be "net" or "overall internal"',
})
export type VolumeBasis = z.infer<typeof VolumeBasis>

export const Building = z.strictObject({
  name: nameField('building name'),
  site: textField('site').optional(),
  address: textField('address').optional(),
  volume_m3: numberField({ term: 'internal volume', unit: 'm³' }, 1, 1e7).optional(),
  volumeBasis: VolumeBasis.optional(),
  volumeUncertainty_m3: numberField(
    { term: 'standard uncertainty of the volume', unit: 'm³' },
    0,
    1e6,
  ).optional(),
  envelopeArea_m2: numberField({ term: 'envelope area', unit: 'm²' }, 1, 1e7).optional(),
  floorArea_m2: numberField({ term: 'floor area', unit: 'm²' }, 1, 1e7).optional(),
  height_m: numberField({ term: 'building height', unit: 'm' }, 0.5, 1000).optional(),
  altitude_m: numberField({ term: 'altitude of the site', unit: 'm' }, -500, 6000).optional(),
  largeBuilding: nameField('reason for treating the building as large').optional(),
})
export type Building = z.infer<typeof Building>
