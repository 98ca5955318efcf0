import {
  type Cell,
  findUnit,
  type Grid,
  interpret,
  type KnownUnit,
  pageText,
  RECORD_UNITS,
  type Sheet,
  withSheet,
} from '@draughtbook/shared-calc/log'
import { columnLetters, parseArea } from '../host/address.js'
import type { Pick } from '../pane/one-test/entries.js'
import type { Told } from './told.js'
import { unitAbove, unitInHeading } from './unit-nearby.js'

/** One place of a picked list: a value, a blank, or a cell that is left out with a finding. */
export type Place =
  | { cell: string; value: number }
  | { cell: string; blank: true }
  | { cell: string; leftOut: true }

/** The list a pick stands for, in reading order; headings above the first number are left out, and said so. */
export function readColumn(grid: Grid, pick: Pick, quantity: 'pressure' | 'flow', told: Told): Place[] {
  const located = locate(grid, pick.reference)
  if (!located) {
    told.problem(pick.reference, `This workbook has no cells ${pick.reference}.`)
    return []
  }
  const { sheet, area } = located
  const cells: { cell: Cell | undefined; address: string; row: number; column: number }[] = []
  const [bottom, right] = [Math.min(area.bottom, sheet.rows), Math.min(area.right, sheet.columns)]
  for (let row = area.top; row <= bottom; row++)
    for (let column = area.left; column <= right; column++) {
      const address = withSheet(sheet.name, `${columnLetters(column)}${row}`)
      cells.push({ cell: sheet.at(row - 1, column - 1), address, row: row - 1, column: column - 1 })
    }
  while (cells.at(-1) && !cells.at(-1)?.cell) cells.pop()
  const heading = headingLength(cells.map(({ cell }) => cell))
  const headings = cells.splice(0, heading)
  const named = headings.map(({ cell }) => unitInHeading(String(cell?.value ?? ''), quantity)).find(Boolean)
  for (const { cell, address } of headings)
    if (cell) told.tell(pageText('heading', { text: String(cell.value) }), address)
  const above = (): KnownUnit | undefined => unitAbove(sheet, area, quantity)
  const unit =
    (pick.unit === undefined ? undefined : findUnit(pick.unit)) ?? named ?? above() ?? base(quantity)
  return cells.map(({ cell, address, row, column }): Place => {
    if (!cell) return { cell: address, blank: true }
    if (sheet.isRowHidden(row) || sheet.isColumnHidden(column)) told.tell(pageText('hidden-cell'), address)
    if (cell.struck === 'whole') {
      told.tell(pageText('struck-through'), address)
      return { cell: address, leftOut: true }
    }
    const read = interpret(cell, { kind: 'quantity', quantity }, { unit, date1904: grid.date1904 })
    if ('refused' in read) {
      told.problem(address, read.message)
      return { cell: address, leftOut: true }
    }
    for (const remark of read.remarks) told.add(remark.severity, remark.rule, remark.message, address)
    return { cell: address, value: Number(read.value) }
  })
}

const base = (quantity: 'pressure' | 'flow'): KnownUnit => ({ kind: quantity, unit: RECORD_UNITS[quantity] })

/** Texts without a figure, and blanks, before the first cell that holds a number. */
function headingLength(cells: readonly (Cell | undefined)[]): number {
  const first = cells.findIndex(
    (cell) => cell && (cell.kind !== 'text' || /\d/.test(String(cell.value).replace(/m3|m³|H2O/gi, ''))),
  )
  return Math.max(0, first)
}

export function locate(
  grid: Grid,
  reference: string,
): { sheet: Sheet; area: { top: number; left: number; bottom: number; right: number } } | undefined {
  const area = parseArea(reference)
  if (area) {
    const sheet = grid.sheet(area.sheet ?? grid.sheetNames[0] ?? '')
    return sheet && { sheet, area }
  }
  const name = grid.names.find((candidate) => candidate.name.toLowerCase() === reference.toLowerCase())
  const sheet = name && grid.sheet(name.sheet)
  if (!name || !sheet) return undefined
  const { top, left, bottom, right } = name.block
  return { sheet, area: { top: top + 1, left: left + 1, bottom: bottom + 1, right: right + 1 } }
}
