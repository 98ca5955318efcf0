import { isDateFormat } from '../cells/dates.js'
import { plainWord } from '../cells/fields.js'
import { readNumberText } from '../cells/number-text.js'
import { findUnit } from '../cells/units.js'
import { addressOf, withSheet } from '../grid/address.js'
import type { Cell, Sheet } from '../grid/grid.js'
import { readHeading } from '../layout/match.js'

/** Only this much of a sheet is searched for headings and labels. */
const SEARCHED = { rows: 300, columns: 60 }

export interface Label {
  row: number
  column: number
  text: string
}

/** Texts of a sheet that may be labels or headings: short, not numbers, in reading order. */
export function labelsOf(sheet: Sheet): Label[] {
  const labels: Label[] = []
  for (let row = 0; row < Math.min(sheet.rows, SEARCHED.rows); row++)
    for (let column = 0; column < Math.min(sheet.columns, SEARCHED.columns); column++) {
      const cell = sheet.at(row, column)
      if (cell?.kind === 'text' && String(cell.value).length <= 80 && !isNumberLike(cell))
        labels.push({ row, column, text: String(cell.value) })
    }
  return labels
}

/** A number, or text that begins with one. */
export function isNumberLike(cell: Cell | undefined): boolean {
  if (!cell) return false
  if (cell.kind === 'number') return !isDateFormat(cell.format)
  return cell.kind === 'text' && readNumberText(String(cell.value)) !== undefined
}

/** The number a cell shows, as far as it is beyond doubt. */
export function numberOf(cell: Cell | undefined): number | undefined {
  if (cell?.kind === 'number') return Number(cell.value)
  const read = cell?.kind === 'text' ? readNumberText(String(cell.value)) : undefined
  return read && 'value' in read ? read.value : undefined
}

/** Numbers below a heading: how many rows of units or blanks come between, and the numbers to the first row without one. */
export function numbersBelow(sheet: Sheet, { row, column }: Label): { skip: number; values: number[] } {
  const start = (sheet.mergeAt(row, column)?.bottom ?? row) + 1
  for (let skip = 0; skip <= 2; skip++) {
    const cell = sheet.at(start + skip, column)
    if (!isNumberLike(cell)) {
      // Only a blank or a unit may stand between a heading and its numbers.
      if (cell && !(cell.kind === 'text' && findUnit(String(cell.value).replace(/^[([]|[)\]]$/g, '')))) break
      continue
    }
    const values: number[] = []
    for (let at = start + skip; isNumberLike(sheet.at(at, column)); at++)
      values.push(numberOf(sheet.at(at, column)) ?? Number.NaN)
    return { skip, values }
  }
  return { skip: 0, values: [] }
}

/** Numbers to the right of a label, up to the first cell without one. */
export function numbersRight(sheet: Sheet, { row, column }: Label): number[] {
  const values: number[] = []
  const start = (sheet.mergeAt(row, column)?.right ?? column) + 1
  for (let at = start; isNumberLike(sheet.at(row, at)); at++)
    values.push(numberOf(sheet.at(row, at)) ?? Number.NaN)
  return values
}

/** A label as a layout names it: a star in the log's own text is none of the layout's, which stands for anything. */
export const nameOf = ({ text }: Label): string => text.replaceAll('*', ' ')

/** Which of equal labels this one is, as a layout states it; nothing where it is the only one. */
export function nthOf(labels: readonly Label[], label: Label): { nth?: number } {
  const places = wordsOf(labels).get(plainWord(nameOf(label)))
  return places && places.size > 1 ? { nth: places.get(placeKey(label.row, label.column)) ?? 0 } : {}
}

/** Places of labels by what a layout may call them, numbered from 1 in reading order. */
type PlacesByWord = ReadonlyMap<string, ReadonlyMap<string, number>>

const known = new WeakMap<readonly Label[], PlacesByWord>()

/** Indexed once for all labels of a sheet: comparing each with each takes the square of their number. */
function wordsOf(labels: readonly Label[]): PlacesByWord {
  const before = known.get(labels)
  if (before) return before
  const index = new Map<string, Map<string, number>>()
  for (const { row, column, text } of labels) {
    const { whole, words } = readHeading(text)
    for (const name of new Set([whole, words])) {
      const places = index.get(name) ?? new Map<string, number>()
      index.set(name, places)
      places.set(placeKey(row, column), places.size + 1)
    }
  }
  known.set(labels, index)
  return index
}

export const placeKey = (row: number, column: number): string => `${row},${column}`

export function cellText(sheet: Sheet, { row, column }: { row: number; column: number }): string {
  return withSheet(sheet.name, addressOf(row, column))
}
