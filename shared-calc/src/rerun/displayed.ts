import { readNumberText } from '../log/cells/number-text.js'
import type { Cell } from '../log/grid/grid.js'

/** A number as a cell shows it: its full value, and the decimal places a reader sees. */
export interface Displayed {
  readonly value: number
  readonly decimals: number
}

/** What General shows of a number at most, in digits. */
const GENERAL_DIGITS = 9

/** The number a result cell shows. Undefined where it holds none. @param decimal - the file's decimal sign in texts */
export function displayedNumber(cell: Cell, decimal?: '.' | ','): Displayed | undefined {
  if (cell.kind === 'number' && typeof cell.value === 'number')
    return { value: cell.value, decimals: decimalsOf(cell.value, cell.format) }
  if (cell.kind !== 'text') return undefined
  // The one unit that begins with a digit would be taken for a group of the number's own.
  const text = String(cell.value).replace(/(?<!\s)\s+1\/h\s*$/i, '')
  const read = readNumberText(text, decimal)
  if (!read || 'ambiguous' in read) return undefined
  const sign = read.comma ? ',' : '.'
  const digits = /\d(?:.*\d)?/.exec(text)?.[0] ?? ''
  const typed = digits.includes(sign)
    ? (/^\d+/.exec(digits.slice(digits.lastIndexOf(sign) + 1))?.[0] ?? '')
    : ''
  return { value: read.value, decimals: typed.length }
}

/** Decimal places a number format shows of a value. */
export function decimalsOf(value: number, format: string | undefined): number {
  const section = (format ?? '').split(';')[value < 0 && (format ?? '').includes(';') ? 1 : 0] ?? ''
  const plain = section.replace(/"[^"]*"|\\.|\[[^[\]]*\]|_.|\*./g, '')
  if (!/[0#?]/.test(plain)) return placesOf(Number(value.toPrecision(GENERAL_DIGITS)))
  const places = /\.([0#?]*)/.exec(plain)?.[1]?.length ?? 0
  if (/[eE][+-]/.test(plain)) return places - Math.floor(Math.log10(Math.abs(value) || 1))
  return places + (plain.includes('%') ? 2 : 0)
}

function placesOf(value: number): number {
  const [digits = '', exponent = '0'] = String(value).toLowerCase().split('e')
  return Math.max(0, (digits.split('.')[1]?.length ?? 0) - Number(exponent))
}
