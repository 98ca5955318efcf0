import { z } from 'zod'

export interface FieldMeta {
  /** The trade's term, as a form label or an error message shows it. */
  term: string
  /** Unit as printed; '1' for a plain number. */
  unit: string
}

/**
 * A finite number with the physical bounds outside which no building test can lie.
 * Bounds refuse what must be a slip of unit or of the pen; the limits of test methods are findings, not bounds.
 */
export function numberField(meta: FieldMeta, minimum: number, maximum: number) {
  const unit = meta.unit === '1' ? '' : ` ${meta.unit}`
  return z
    .number({
      error: (issue) => `${meta.term} must be a number${unit && ` in${unit}`}, not ${shown(issue.input)}`,
    })
    .min(minimum, { error: (issue) => outside(meta, issue.input, minimum, maximum) })
    .max(maximum, { error: (issue) => outside(meta, issue.input, minimum, maximum) })
    .meta({ title: meta.term, unit: meta.unit })
}

function outside({ term, unit }: FieldMeta, input: unknown, minimum: number, maximum: number): string {
  const hint = unit === '1' && maximum === 1 ? ' (a fraction, not per cent)' : ''
  return `${term} is ${String(input)}; it must lie between ${minimum} and ${maximum}${unit === '1' ? '' : ` ${unit}`}${hint}`
}

function shown(input: unknown): string {
  if (input === undefined) return 'missing'
  if (typeof input === 'string') return `the text ${JSON.stringify(input.slice(0, 40))}`
  if (Array.isArray(input)) return 'a list'
  // An object from outside may have anything in the place of its toString.
  return typeof input === 'object' && input !== null ? 'an object' : String(input)
}
