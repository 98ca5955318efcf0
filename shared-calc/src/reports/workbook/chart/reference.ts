import type { RangeReference } from './description.js'

const LIMITS = { columns: 16_384, rows: 1_048_576 }

/** Absolute formula text of a range, `'Tom''s readings'!$B$5:$B$14`. Throws RangeError as `cellCount` does. */
export function rangeFormula(reference: RangeReference): string {
  const { first, last } = corners(reference)
  const sheet = `'${reference.sheet.replaceAll("'", "''")}'`
  const from = `$${first.letters}$${first.row}`
  return reference.range.includes(':') ? `${sheet}!${from}:$${last.letters}$${last.row}` : `${sheet}!${from}`
}

/** Number of cells of one column or one row. Throws RangeError naming the range when it is anything else. */
export function cellCount(reference: RangeReference): number {
  const { first, last } = corners(reference)
  return Math.max(last.column - first.column, last.row - first.row) + 1
}

function corners(reference: RangeReference) {
  const [from = '', to = from, ...more] = reference.range.split(':')
  const first = cell(from)
  const last = cell(to)
  const forward = first && last && last.column >= first.column && last.row >= first.row
  if (!forward || more.length > 0 || (last.column > first.column && last.row > first.row)) {
    throw new RangeError(`${reference.sheet}!${reference.range} is not one column or row such as B5:B14`)
  }
  return { first, last }
}

function cell(text: string) {
  const match = /^\$?([A-Za-z]{1,3})\$?([1-9][0-9]{0,6})$/.exec(text)
  if (!match) return undefined
  const letters = (match[1] ?? '').toUpperCase()
  const row = Number(match[2])
  const column = [...letters].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0)
  return column <= LIMITS.columns && row <= LIMITS.rows ? { letters, column, row } : undefined
}
