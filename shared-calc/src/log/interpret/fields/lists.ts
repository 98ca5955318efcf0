import { bareUnit } from '../../cells/stated-unit.js'
import type { KnownUnit } from '../../cells/units.js'
import type { Written } from '../../cells/written.js'
import { blockBetween } from '../../grid/address.js'
import type { View } from '../grid/view.js'
import { labelColumn } from '../tables/houses-beside.js'
import type { FoundRun } from '../tables/runs.js'
import { type Label, readLabel, says } from '../words/label.js'
import { isUnitOrBlank } from '../zero-flow/headings.js'
import { type FoundField, made } from './found-field.js'
import { isLineOfUnits } from './values-below.js'

/** Values of a row under headings, for lists with one row a test. */
export function fieldsOfRow(
  view: View,
  row: number,
  columns: readonly { at: number; label: Label; unit?: KnownUnit; headingCell: string }[],
): FoundField[] {
  return columns.flatMap(({ at, label, unit, headingCell }) => {
    const field = made(view, { row, column: at }, { row, column: at }, label, view.at(row, at), unit)
    return field ? [{ ...field, labelCell: headingCell }] : []
  })
}

/** Values above the flows of a house, by the labels in front of them. */
export function fieldsAbove({ view, block }: FoundRun, column: number): FoundField[] {
  const { segment } = block
  return Array.from({ length: segment.head.top }, (_, row) => row).flatMap((row) => {
    const at = labelColumn(segment, row)
    const text = view.text(row, at)
    if (text === undefined || at === column) return []
    return (
      made(view, { row, column }, { row, column: at }, readLabel(text), view.at(row, column), undefined) ?? []
    )
  })
}

/**
 * Values over the columns of one test among tests side by side: "Date | | 22 April | | 6 May" above "First test" and "After sealing". A
 * line with a value over one of them only is not meant so.
 */
export function fieldsOver(own: readonly FoundRun[], others: readonly FoundRun[]): FoundField[] {
  const [first] = own
  if (!first || first.view.turned || first.row !== undefined) return []
  const { view, top } = first
  const beside = others.filter(
    (one) => one.view.name === view.name && one.top <= first.bottom && one.bottom >= top,
  )
  // Numbers of the readings in front of the first block stand below the labels.
  const start = Math.min(
    ...[...own, ...beside].flatMap(({ block }) => [block.pressure.at, ...block.carriers.map(({ at }) => at)]),
  )
  const span = boundsOf(own)
  const foreign = beside.filter(({ left, right }) => right < span.left || left > span.right)
  if (foreign.length === 0) return []
  const from = Math.max(0, top - ROWS_OVER)
  return Array.from({ length: top - from }, (_, index) => from + index).flatMap((row) => {
    const labelAt = Array.from({ length: start }, (_, column) => column).find(
      (column) => view.text(row, column) !== undefined,
    )
    const text = labelAt === undefined ? undefined : view.text(row, labelAt)
    const within = (one: { left: number; right: number }) =>
      valueWithin(view, row, one) ??
      nameWithin(view, row, { left: Math.max(one.left, start), right: one.right })
    const column = within(span)
    if (text === undefined || labelAt === undefined || column === undefined) return []
    if (foreign.every((one) => within(one) === undefined) || hasOwnLabel(view, row, column, start)) return []
    const at = { row, column }
    const content = view.at(row, column)
    return made(view, at, { row, column: labelAt }, readLabel(text), content, undefined) ?? []
  })
}

/** "Volume | 805 | | Plot | Birch 19" over the second of two tests: its value has a label of its own, or is one. */
function hasOwnLabel(view: View, row: number, column: number, start: number): boolean {
  const [before, behind] = [view.text(row, column - 1), view.at(row, column + 1)]
  if (column > start && before !== undefined && !isUnitOrBlank(before)) return true
  const isText = view.text(row, column) !== undefined
  return isText && behind !== undefined && !(behind.kind === 'text' && isUnitOrBlank(behind.text))
}

/** A form above tests side by side has so many lines at most. */
const ROWS_OVER = 30

const boundsOf = (runs: readonly FoundRun[]) => ({
  left: Math.min(...runs.map(({ left }) => left)),
  right: Math.max(...runs.map(({ right }) => right)),
})

/** Column of the first number or date of a line over some columns. */
function valueWithin(view: View, row: number, { left, right }: { left: number; right: number }) {
  for (let column = left; column <= right; column++) {
    const kind = view.at(row, column)?.kind
    if (kind === 'number' || kind === 'date') return column
  }
  return undefined
}

/** Column of the first text of a line over some columns that is no unit: the name of a house, a day in words. */
function nameWithin(view: View, row: number, { left, right }: { left: number; right: number }) {
  for (let column = left; column <= right; column++) {
    const text = view.text(row, column)
    if (text !== undefined && !isUnitOrBlank(text)) return column
  }
  return undefined
}

/** A list whose first column is headed as rooms, or whose sheet is named after them. */
function isOfRooms(view: View, row: number, column: number): boolean {
  if (says(readLabel(view.name), 'room')) return true
  for (let left = column - 1; left >= Math.max(0, column - 10); left--) {
    const text = view.text(row, left)
    if (text !== undefined && says(readLabel(text), 'room')) return true
  }
  return false
}

/** A line of a list of houses. */
export interface NamedRow {
  readonly name: string
  readonly fields: readonly FoundField[]
}

/** Values of the rows of a list of houses, under its headings, by the name in front of each row. */
export function namedRowsOf(
  view: View,
  isTaken: (row: number, column: number) => boolean,
  isTest: (name: string) => boolean,
): NamedRow[] {
  for (let row = 0; row < Math.min(view.rows, 40); row++) {
    const headings: { at: number; label: Label; unit?: KnownUnit; headingCell: string }[] = []
    for (let column = 1; column < view.columns; column++) {
      const text = view.text(row, column)
      if (text === undefined || text.length > 60 || isTaken(row, column)) continue
      // A unit behind a value is no heading of what stands below.
      if (bareUnit(text) && view.number(row, column - 1) !== undefined) continue
      // "Volume | 645.5" is a line of a form.
      if (view.number(row, column + 1) !== undefined) continue
      const label = readLabel(text)
      headings.push({
        at: column,
        label,
        ...(label.unit && !label.loose ? { unit: label.unit } : {}),
        headingCell: view.address(row, column),
      })
    }
    if (!headings.some(({ label }) => says(label, 'volume') || label.unit?.kind === 'volume')) continue
    const found: { name: string; fields: FoundField[] }[] = []
    const hasUnits = view.at(row + 1, 0) === undefined && isLineOfUnits(view, row + 1, 1, view.columns)
    if (hasUnits)
      for (const heading of headings) {
        const unit = bareUnit(view.text(row + 1, heading.at) ?? '')
        if (unit) heading.unit = unit
      }
    for (let at = row + (hasUnits ? 2 : 1); at < view.rows; at++) {
      const name = view.text(at, 0) ?? view.number(at, 0)?.toString()
      if (name === undefined || isTaken(at, 0)) break
      const fields = fieldsOfRow(
        view,
        at,
        headings.filter((heading) => !isTaken(at, heading.at)),
      )
      if (fields.length > 0) found.push({ name, fields })
    }
    // Zones of a building may be tested one by one; rooms are not.
    const ofTests = found.filter(({ name }) => isTest(name))
    if (ofTests.length > 1) return ofTests
    if (found.length > 1 && !isOfRooms(view, row, headings[0]?.at ?? 1)) return found
  }
  return []
}

/** Numbers of a rooms table added up, where no total stands. */
export function roomsOf(
  view: View,
  isTaken: (row: number, column: number) => boolean,
): { sum: Written; cells: string; count: number } | undefined {
  for (let row = 0; row < view.rows; row++)
    for (let column = 0; column < view.columns; column++) {
      const text = view.text(row, column)
      if (text === undefined || isTaken(row, column)) continue
      const label = readLabel(text)
      if (label.unit?.kind !== 'volume' && !says(label, 'volume')) continue
      if (!isOfRooms(view, row, column)) continue
      const values: number[] = []
      let at = row + 1
      for (; view.number(at, column) !== undefined; at++) {
        const left = view.text(at, 0)
        if (left !== undefined && says(readLabel(left), 'total')) break
        values.push(view.number(at, column) as number)
      }
      if (values.length < 2) continue
      const unit = label.unit?.kind === 'volume' ? label.unit : undefined
      return {
        sum: { value: Number(values.reduce((a, b) => a + b).toFixed(3)), ...(unit ? { unit } : {}) },
        cells: blockBetween(view.address(row + 1, column), view.address(at - 1, column)),
        count: values.length,
      }
    }
  return undefined
}
