import { withMinus } from '@draughtbook/shared-calc'

/** A number with so many significant figures, never in powers of ten within everyday sizes. */
export function figure(value: number, significant = 3): string {
  if (!Number.isFinite(value)) return '–'
  if (value === 0) return '0'
  const digits = Math.max(0, significant - 1 - Math.floor(Math.log10(Math.abs(value))))
  return withMinus(value.toFixed(Math.min(digits, 8)))
}

/** Most figures that the ends of an interval are shown with. */
const MOST_FIGURES = 6

/** An interval, with as many significant figures as tell its ends apart. */
export function span(lower: number, upper: number): string {
  let digits = 3
  while (digits < MOST_FIGURES && figure(lower, digits) === figure(upper, digits)) digits += 1
  return `${figure(lower, digits)} to ${figure(upper, digits)}`
}

/** A number with its sign and so many decimal places. */
export function signed(value: number, decimals: number): string {
  const text = Math.abs(value).toFixed(decimals)
  if (Number(text) === 0) return text
  return value < 0 ? `−${text}` : `+${text}`
}

/** Units people use for a field of the form, by the unit its name ends in; the record's own first. */
const BY_ENDING: readonly (readonly [ending: RegExp, units: readonly string[]])[] = [
  [/barometricPressure_Pa$/, ['Pa', 'hPa', 'mbar', 'kPa', 'inHg', 'mmHg']],
  [/_m3$/, ['m³', 'ft³']],
  [/_m2$/, ['m²', 'ft²']],
  [/Temperature_C$/, ['°C', '°F']],
  [/(height|altitude)_m$/, ['m', 'ft']],
  [/Speed_m_s$/, ['m/s', 'km/h', 'mph', 'kn']],
]
const ASKED = /^(building|conditions|plan\.forecast)\./

/** Units to choose from beside a field's number; fewer than two where there is nothing to choose. */
export const unitsOf = (path: string): readonly string[] =>
  ASKED.test(path) ? (BY_ENDING.find(([ending]) => ending.test(path))?.[1] ?? []) : []
