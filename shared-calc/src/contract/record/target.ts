import { z } from 'zod'
import { VolumeBasis } from './building.js'
import { numberField } from './number-field.js'
import { nameField } from './text-field.js'

/** Quantities a limit can be set on. Names with _pr ask for a reference pressure of their own. */
export const TargetQuantity = z.enum(['n50', 'qE50', 'qF50', 'q50', 'n_pr', 'qE_pr', 'qF_pr', 'q_pr'], {
  error: 'target quantity must be one of n50, qE50, qF50, q50, n_pr, qE_pr, qF_pr, q_pr',
})
export type TargetQuantity = z.infer<typeof TargetQuantity>

/** Which directions a target counts: their mean, each by itself, or any one of them (mean if both were run). */
export const TargetDirections = z.enum(['mean', 'each', 'any'], {
  error: 'directions must be "mean", "each" or "any"',
})
export type TargetDirections = z.infer<typeof TargetDirections>

export const PresetTarget = z.strictObject({
  preset: nameField('target preset'),
  directions: TargetDirections.optional(),
})

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
    if (!asksPressure && given !== undefined && given !== 50)
      context.addIssue({
        code: 'custom',
        path: ['referencePressure_Pa'],
        message: `target ${target.quantity} applies at 50 Pa; for ${given} Pa use ${target.quantity.replace('50', '_pr')}`,
      })
  })
export type OwnTarget = z.infer<typeof OwnTarget>

export const Target = z.union([PresetTarget, OwnTarget])
export type Target = z.infer<typeof Target>
