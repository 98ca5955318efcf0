import { z } from 'zod'
import { VolumeBasis } from './building.js'
import { anyOf, countedIn, elementKinds, partUses } from './choices.js'
import { numberField } from './number-field.js'
import { lengthField, PlaneFigure, Solid } from './take-off-shapes.js'
import { nameField, textField } from './text-field.js'

export const CountsIn = z.enum(countedIn, { error: `countsIn must be ${anyOf(countedIn)}` })
export type CountsIn = z.infer<typeof CountsIn>

const count = z
  .int({ error: 'count must be a whole number' })
  .min(1, { error: 'count must be at least 1' })
  .max(10_000)
const use = z.enum(partUses, { error: `use must be ${anyOf(partUses)}` })
const uncertainty = lengthField('standard uncertainty of each length', 0)

/** An exclusion says why, or nobody can check it. */
function reasonForExclusion(
  part: { use: 'add' | 'exclude'; reason?: string | undefined },
  context: z.RefinementCtx,
): void {
  if (part.use === 'exclude' && part.reason === undefined)
    context.addIssue({ code: 'custom', path: ['reason'], message: 'an excluded part needs a reason' })
}

/** A room, or a part of one; or something taken off. */
export const Space = z
  .strictObject({
    name: nameField('name of the space'),
    storey: textField('storey').optional(),
    countsIn: CountsIn,
    use,
    reason: nameField('reason').optional(),
    /** Whether its plan area counts as floor area; an upper part of the same room does not. */
    countsAsFloor: z.boolean({ error: 'countsAsFloor must be true or false' }),
    count: count.optional(),
    lengthUncertainty_m: uncertainty.optional(),
    solid: Solid,
  })
  .superRefine(reasonForExclusion)
export type Space = z.infer<typeof Space>

export const ElementKind = z.enum(elementKinds, { error: `kind must be ${anyOf(elementKinds)}` })
export type ElementKind = z.infer<typeof ElementKind>

/** An element of the envelope, by its inside dimensions. */
export const EnvelopeElement = z
  .strictObject({
    name: nameField('name of the element'),
    kind: ElementKind,
    use,
    reason: nameField('reason').optional(),
    count: count.optional(),
    lengthUncertainty_m: uncertainty.optional(),
    figure: PlaneFigure,
  })
  .superRefine(reasonForExclusion)
export type EnvelopeElement = z.infer<typeof EnvelopeElement>

/** Totals that a plan or an earlier report states, to be compared. */
export const StatedTotals = z.strictObject({
  from: nameField('source of the stated totals'),
  volume_m3: numberField({ term: 'stated volume', unit: 'm³' }, 1, 1e7).optional(),
  volumeBasis: VolumeBasis.optional(),
  envelopeArea_m2: numberField({ term: 'stated envelope area', unit: 'm²' }, 1, 1e7).optional(),
  floorArea_m2: numberField({ term: 'stated floor area', unit: 'm²' }, 1, 1e7).optional(),
})
export type StatedTotals = z.infer<typeof StatedTotals>

/** Volume and areas of a building, space by space and element by element. */
export const TakeOff = z.strictObject({
  spaces: z.array(Space).min(1, { error: 'the take-off has no spaces; enter at least one' }).max(2000),
  elements: z.array(EnvelopeElement).max(2000).optional(),
  /** Standard uncertainty of a length where a space or element gives none of its own. */
  lengthUncertainty_m: uncertainty.optional(),
  /** Relative standard uncertainty that all lengths share: a print out of scale, a tape. */
  scaleUncertainty: numberField(
    { term: 'relative standard uncertainty of the scale', unit: '1' },
    0,
    1,
  ).optional(),
  stated: StatedTotals.optional(),
  notes: textField('notes on the take-off').optional(),
})
export type TakeOff = z.infer<typeof TakeOff>
