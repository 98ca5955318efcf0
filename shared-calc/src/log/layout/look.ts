import { cellText } from '../../catalogue/findings/log/cells.js'
import type { Remark } from '../../catalogue/findings/remark.js'
import { fieldKind } from '../cells/fields.js'
import { type Interpreted, interpret, type Reading } from '../cells/interpret.js'
import { findUnit, type KnownUnit, type QuantityKind, RECORD_UNITS, shown } from '../cells/units.js'
import type { Collector } from '../collector.js'
import { addressOf, withSheet } from '../grid/address.js'
import type { Cell, Sheet } from '../grid/grid.js'
import { type LogProblemCode, refuse } from '../problem.js'
import { readHeading } from './match.js'
import type { Layout } from './schema.js'
import { type Found, type Scope, textOf } from './scope.js'

/** What a cell turned out to hold, before it is decided where in the record it goes. */
export type Looked = { address: string; remarks: Remark[] } & (
  | { state: 'blank' | 'struck' }
  | { state: 'value'; value: number | string }
  | { state: 'refused'; code: LogProblemCode; message: string; cell: Cell }
)

export interface LookOptions {
  unit?: string | undefined
  words?: Readonly<Record<string, string>> | undefined
  /** A unit may stand in the cell to the right. */
  neighbour?: boolean
}

/** Reads the cell at a place as the field at a path, without telling anyone yet. */
export function look(
  scope: Scope,
  layout: Layout,
  found: Found,
  path: string,
  options: LookOptions = {},
): Looked {
  return lookAlong(scope, layout, found, path, options)(found.row, found.column)
}

/** The same for many cells of one list: what is stated of all of them is worked out once, at the first that is not blank. */
export function lookAlong(
  scope: Scope,
  layout: Layout,
  { sheet, heading }: Pick<Found, 'sheet' | 'heading'>,
  path: string,
  options: LookOptions = {},
): (row: number, column: number) => Looked {
  const field = fieldKind(path)
  let known: Reading | undefined
  const readingAt = (row: number, column: number, address: string): Reading => {
    const unit =
      field.kind === 'quantity'
        ? unitOf(heading, sheet, row, column, field.quantity, options, path, address)
        : undefined
    const decimal = layout.decimal ?? scope.grid.decimal
    return {
      ...(unit ? { unit } : {}),
      ...(decimal ? { decimal } : {}),
      ...(layout.dateOrder ? { dateOrder: layout.dateOrder } : {}),
      ...(options.words ? { words: options.words } : {}),
      date1904: scope.grid.date1904,
    }
  }
  return (atRow, atColumn) => {
    const own = sheet.at(atRow, atColumn)
    const merged = own ? undefined : sheet.mergeAt(atRow, atColumn)
    const row = merged?.top ?? atRow
    const column = merged?.left ?? atColumn
    const address = withSheet(sheet.name, addressOf(row, column))
    const cell = merged ? sheet.at(row, column) : own
    if (!cell || (cell.kind === 'text' && String(cell.value).trim() === ''))
      return { state: 'blank', address, remarks: [] }
    const remarks = placeRemarks(sheet, row, column, merged !== undefined)
    if (cell.struck === 'whole') return { state: 'struck', address, remarks }
    // Only a neighbour's unit differs from cell to cell.
    const reading = (!options.neighbour && known) || readingAt(row, column, address)
    known = reading
    const result: Interpreted = interpret(cell, field, reading)
    if ('refused' in result)
      return { state: 'refused', address, remarks, code: result.refused, message: result.message, cell }
    remarks.push(...result.remarks)
    if (field.kind === 'quantity' && !reading.unit && !result.ownUnit)
      remarks.push(cellText('log-unit-assumed', { unit: shown(RECORD_UNITS[field.quantity]) }))
    return { state: 'value', address, value: result.value, remarks }
  }
}

/** The unit the layout, the heading or the neighbouring cell states. Two that differ are refused, not weighed. */
function unitOf(
  heading: string | undefined,
  sheet: Sheet,
  row: number,
  column: number,
  quantity: QuantityKind,
  options: LookOptions,
  path: string,
  address: string,
): KnownUnit | undefined {
  const stated = options.unit === undefined ? undefined : findUnit(options.unit)
  if (options.unit !== undefined && !stated)
    refuse(
      'layout-invalid',
      `the layout states the unit ${JSON.stringify(options.unit)}, which this reader does not know`,
      { path },
    )
  const read = heading === undefined ? undefined : readHeading(heading)
  const headed = read?.loose && read.unit?.kind !== quantity ? undefined : read?.unit
  const beside = options.neighbour ? textOf(sheet.at(row, column + 1)) : undefined
  const neighbour = beside === undefined ? undefined : findUnit(beside)
  const named = [
    stated,
    headed,
    neighbour?.kind === (stated ?? headed)?.kind || !(stated ?? headed) ? neighbour : undefined,
  ]
  const units = named.filter((unit): unit is KnownUnit => unit !== undefined)
  const [first] = units
  const other = units.find(({ unit }) => unit !== first?.unit)
  if (first && other)
    refuse(
      'unknown-unit',
      `the unit is ${shown(first.unit)} by the layout or the heading, but ${shown(other.unit)} by the heading or the next cell: make them the same`,
      { path, cell: address },
    )
  return first
}

function placeRemarks(sheet: Sheet, row: number, column: number, merged: boolean): Remark[] {
  const remarks: Remark[] = []
  const hidden = sheet.hidden
    ? 'sheet'
    : sheet.isRowHidden(row)
      ? 'row'
      : sheet.isColumnHidden(column)
        ? 'column'
        : undefined
  if (hidden) remarks.push(cellText('log-hidden', { what: 'cell', hidden }))
  if (merged) remarks.push(cellText('log-merged'))
  return remarks
}

/** Reports what was seen and hands on the value, as the field at its final path. */
export function settle(looked: Looked, collector: Collector, path: string): number | string | undefined {
  if (looked.state !== 'blank') collector.cells[path] = looked.address
  for (const remark of looked.remarks) collector.tell(remark, looked.address, path)
  if (looked.state === 'value') return looked.value
  if (looked.state === 'refused') collector.refuse(looked.code, looked.message, looked.address, path)
  if (looked.state === 'struck')
    collector.tell(cellText('log-struck-through', { what: 'cell' }), looked.address, path)
  if (looked.state === 'blank') {
    collector.cells[path] = looked.address
    collector.tell(cellText('log-blank', { what: 'cell' }), looked.address, path)
  }
  return undefined
}
