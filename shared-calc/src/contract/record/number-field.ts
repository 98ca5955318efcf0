import { z } from 'zod'
import { kindOf, printed } from '../check.js'
import { likelySlip, type UnitSlip } from './plausible.js'

export interface FieldMeta {
  /** The trade's term, as a form label or an error message shows it. */
  readonly term: string
  /** Unit as printed; '1' for a plain number. */
  readonly unit: string
  /** Range of ordinary tests; a finding asks about values outside. */
  readonly lowest?: number
  readonly highest?: number
}

/**
 * A finite number with the physical bounds outside which no building test can lie.
 * Bounds refuse what must be a slip of unit or of the pen; the limits of test methods are findings, not bounds.
 */
export function numberField(
  meta: FieldMeta,
  minimum: number,
  maximum: number,
  slips: readonly UnitSlip[] = [],
) {
  const unit = meta.unit === '1' ? '' : ` ${meta.unit}`
  const { lowest, highest } = meta
  return z
    .number({
      error: ({ input }) =>
        input === undefined
          ? `${meta.term} is missing`
          : `${meta.term} must be a number${unit && ` in${unit}`}, not ${kindOf(input)}`,
    })
    .min(minimum, { error: (issue) => outside(meta, issue.input, minimum, maximum, slips) })
    .max(maximum, { error: (issue) => outside(meta, issue.input, minimum, maximum, slips) })
    .meta({
      title: meta.term,
      unit: meta.unit,
      ...(lowest !== undefined && { plausibleMinimum: lowest }),
      ...(highest !== undefined && { plausibleMaximum: highest }),
    })
}

function outside(
  meta: FieldMeta,
  input: unknown,
  minimum: number,
  maximum: number,
  slips: readonly UnitSlip[],
): string {
  const { term, unit } = meta
  const hint = unit === '1' && maximum === 1 ? ' (a fraction, not per cent)' : slipHint(meta, input, slips)
  return `${term} is ${typeof input === 'number' ? printed(input) : String(input)}; it must be between ${printed(minimum)} and ${printed(maximum)}${unit === '1' ? '' : ` ${unit}`}${hint}`
}

/** Names the unit in which the value would be an ordinary one. */
function slipHint({ unit, lowest, highest }: FieldMeta, input: unknown, slips: readonly UnitSlip[]): string {
  if (lowest === undefined || highest === undefined || typeof input !== 'number') return ''
  const slip = likelySlip(input, { lowest, highest }, slips)
  if (!slip) return ''
  return `. Is it in ${slip.unit}? ${printed(input)} ${slip.unit} is ${printed(Number(slip.converted.toPrecision(6)))} ${unit}`
}
