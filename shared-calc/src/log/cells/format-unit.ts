import { findUnit, type KnownUnit } from './units.js'

/** A number format's scale and unit: `0.0" Pa"` shows 50 as "50.0 Pa"; `0%` shows 0.45 as 45 %. */
export interface FormatUnit {
  unit?: KnownUnit
  /** The format shows a fraction in per cent: what is stored is the fraction. */
  percent: boolean
}

/** What the number format says of the value's unit; the person who typed it saw this unit. */
export function formatUnit(format: string | undefined): FormatUnit {
  if (!format) return { percent: false }
  const first = format.split(';')[0] ?? ''
  const literals = [...first.matchAll(/"([^"]*)"|\\(.)/g)]
    .map(([, quoted, escaped]) => quoted ?? escaped ?? '')
    .join('')
  const percent = /%/.test(first.replace(/"[^"]*"|\\./g, ''))
  const unit = literals.trim() ? findUnit(literals) : undefined
  return unit ? { unit, percent } : { percent }
}
