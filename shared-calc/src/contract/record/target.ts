import { z } from 'zod'
import { VolumeBasis } from './building.js'
import { anyOf, targetDirections } from './choices.js'
import { numberField } from './number-field.js'
import { nameField } from './text-field.js'

const quantities = [
  'n50',
  'qE50',
  'qF50',
  'q50',
  'n_pr',
  'qE_pr',
  'qF_pr',
  'q_pr',
  'qT50',
  'qT_pr',
  'aE10',
  'aE_pr',
] as const

/**
 * Quantities a limit can be set on: n per volume, qE per envelope area, qF per floor area, q the flow itself, qT per loss
 * area without the lowest floor, aE the area of a sharp-edged hole per envelope area. Names with _pr ask for a reference
 * pressure of their own; qT and aE came with record@3.
 */
export const TargetQuantity = z.enum(quantities, {
  error: `target quantity must be ${anyOf(quantities)}`,
})
export type TargetQuantity = z.infer<typeof TargetQuantity>

export const TargetDirections = z.enum(targetDirections, {
  error: `directions must be ${anyOf(targetDirections)}`,
})
export type TargetDirections = z.infer<typeof TargetDirections>

export const PresetTarget = z.strictObject({
  preset: nameField('target preset'),
  directions: TargetDirections.optional(),
  /** The result stands for buildings that were not tested: the factor that the scheme asks for then is applied (record@3). */
  sampled: z.boolean({ error: 'sampled must be true or false' }).optional(),
})

/** The reference pressure that a quantity has in its name, Pa. */
export function pressureByName(quantity: TargetQuantity): number | undefined {
  const [, digits] = /(?<![0-9])([0-9]+)$/.exec(quantity) ?? []
  return digits === undefined ? undefined : Number(digits)
}

export const OwnTarget = z
  .strictObject({
    quantity: TargetQuantity,
    limit: numberField({ term: 'limit of the target', unit: '1' }, 1e-6, 1e7),
    referencePressure_Pa: numberField(
      { term: 'reference pressure of the target', unit: 'Pa' },
      1,
      100,
    ).optional(),
    directions: TargetDirections.optional(),
    volumeBasis: VolumeBasis.optional(),
    /** Decimal places to which the value is rounded before it is compared; left out: compared unrounded. */
    decimalPlaces: z.int().min(0).max(6).optional(),
    label: nameField('label of the target').optional(),
  })
  .superRefine((target, context) => {
    const asksPressure = target.quantity.endsWith('_pr')
    const given = target.referencePressure_Pa
    if (asksPressure && given === undefined)
      context.addIssue({
        code: 'custom',
        path: ['referencePressure_Pa'],
        message: `target ${target.quantity} needs a reference pressure`,
      })
    const named = pressureByName(target.quantity)
    if (named !== undefined && given !== undefined && given !== named)
      context.addIssue({
        code: 'custom',
        path: ['referencePressure_Pa'],
        message: `target ${target.quantity} applies at ${named} Pa; for ${given} Pa use ${target.quantity.replace(String(named), '_pr')}`,
      })
  })
export type OwnTarget = z.infer<typeof OwnTarget>

export const Target = z.union([PresetTarget, OwnTarget])
export type Target = z.infer<typeof Target>
