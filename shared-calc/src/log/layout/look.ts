import { cellText } from '../../catalogue/findings/log/cells.js'
import type { Remark } from '../../catalogue/findings/remark.js'
import { fieldKind } from '../cells/fields.js'
import { type Interpreted, interpret, type Reading } from '../cells/interpret.js'
import type { Refused } from '../cells/interpreted.js'
import { statedUnit } from '../cells/stated-unit.js'
import { findUnit, type KnownUnit, type QuantityKind, shown } from '../cells/units.js'
import type { Collector } from '../collector.js'
import { addressOf, type Block, withSheet } from '../grid/address.js'
import { decimalOf } from '../grid/decimal.js'
import type { Cell, Sheet } from '../grid/grid.js'
import { type LogProblemCode, refuse } from '../problem.js'
import { lastBracket } from './heading-parts.js'
import { unitNear } from './nearby.js'
import type { Layout } from './schema.js'
import { type Found, type Scope, textOf } from './scope.js'

/** What a cell turned out to hold, before it is decided where in the record it goes. */
export type Looked = { address: string; remarks: Remark[] } & (
  | { state: 'blank' | 'struck' }
  | { state: 'value'; value: number | string }
  | { state: 'refused'; code: LogProblemCode; message: string; fault?: string; cell: Cell }
)

export interface LookOptions {
  unit?: string | undefined
  words?: Readonly<Record<string, string>> | undefined
  /** A unit may be in the cell to the right. */
  neighbour?: boolean
  /** What to take where nothing states a unit, from the number as it stands. Without it such a number is refused. */
  otherwise?: ((value: number) => AssumedUnit | undefined) | undefined
}

/** A unit that the cells themselves do not state, with what to tell of it. */
export interface AssumedUnit {
  unit: KnownUnit
  remark: Remark
}

/** The cells a unit is looked for around: those of the list a cell belongs to, or the cell alone. */
type Around = Pick<Found, 'sheet' | 'heading'> & { block?: Block | undefined }

/** Reads the cell at a place as the field at a path, without telling anyone yet. */
export function look(
  scope: Pick<Scope, 'grid'>,
  layout: Pick<Layout, 'decimal' | 'dateOrder'>,
  found: Found,
  path: string,
  options: LookOptions = {},
): Looked {
  const { row, column } = found
  const block = found.named ? { top: row, bottom: row, left: column, right: column } : undefined
  return lookAlong(scope, layout, { ...found, block }, path, options)(row, column)
}

/** The same for many cells of one list: what is stated of all of them is worked out once, at the first that is not blank. */
export function lookAlong(
  scope: Pick<Scope, 'grid'>,
  layout: Pick<Layout, 'decimal' | 'dateOrder'>,
  around: Around,
  path: string,
  options: LookOptions = {},
): (row: number, column: number) => Looked {
  const { sheet } = around
  const field = fieldKind(path)
  let known: { unit?: KnownUnit; remarks: Remark[] } | undefined
  const general: Reading = {
    ...(layout.dateOrder ? { dateOrder: layout.dateOrder } : {}),
    ...(options.words ? { words: options.words } : {}),
    date1904: scope.grid.date1904,
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
    const refused = ({ refused: code, ...said }: Refused): Looked => ({
      state: 'refused',
      address,
      remarks,
      code,
      ...said,
      cell,
    })
    const decimal = cell.kind === 'text' ? (layout.decimal ?? decimalOf(scope.grid)) : undefined
    const reading = decimal ? { ...general, decimal } : general
    if (field.kind !== 'quantity') {
      const read = interpret(cell, field, reading)
      if ('refused' in read) return refused(read)
      return { state: 'value', address, value: read.value, remarks: [...remarks, ...read.remarks] }
    }
    // Only a neighbour's unit differs from cell to cell.
    if (options.neighbour || !known)
      known = unitOf(around, row, column, field.quantity, options, path, address)
    const { unit } = known
    let read: Interpreted = interpret(cell, field, unit ? { ...reading, unit } : reading)
    if ('refused' in read) return refused(read)
    if (!unit && !read.ownUnit) {
      const assumed = options.otherwise?.(Number(read.value))
      if (!assumed) return refused(unstated(field.quantity))
      remarks.push(assumed.remark)
      read = interpret(cell, field, { ...reading, unit: assumed.unit })
      if ('refused' in read) return refused(read)
    }
    return {
      state: 'value',
      address,
      value: read.value,
      remarks: [...remarks, ...known.remarks, ...read.remarks],
    }
  }
}

const TERMS: Partial<Record<QuantityKind, string>> = {
  flow: 'air flow',
  fraction: 'share',
  speed: 'wind speed',
}

const unstated = (quantity: QuantityKind): Refused => {
  const fault = `the log does not say in which unit this ${TERMS[quantity] ?? quantity} is: write the unit in its heading or next to it`
  return { refused: 'unknown-unit', message: `${fault}, or state "unit" in the layout`, fault }
}

/**
 * The unit the layout, the heading or the neighbouring cell states; of cells named by their address, that of headings nearby.
 * Two that differ are refused, not weighed; only what was stated with an address goes before a heading nobody named.
 */
function unitOf(
  { sheet, heading, block }: Around,
  row: number,
  column: number,
  quantity: QuantityKind,
  options: LookOptions,
  path: string,
  address: string,
): { unit?: KnownUnit; remarks: Remark[] } {
  const stated = options.unit === undefined ? undefined : findUnit(options.unit)
  if (options.unit !== undefined && !stated)
    refuse(
      'layout-invalid',
      `${JSON.stringify(options.unit)}, the unit stated for these cells, is not known here`,
      { path },
    )
  const headed = heading === undefined ? undefined : headingUnit(heading, quantity)
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
      `the layout or the heading gives the unit ${shown(first.unit)}, but the heading or the next cell gives ${shown(other.unit)}: make them the same`,
      { path, cell: address },
    )
  const near = block && unitNear(sheet, block, quantity)
  const unit = first ?? near
  if (stated && near && near.unit !== stated.unit) return { unit: stated, remarks: [differs(stated, near)] }
  return unit ? { unit, remarks: [] } : { remarks: [] }
}

/** The unit stated of a whole list, as far as it does not stand with its cells. */
export const unitOfList = (
  list: Around,
  quantity: QuantityKind,
  stated: string | undefined,
  path: string,
): KnownUnit | undefined => unitOf(list, 0, 0, quantity, { unit: stated }, path, '').unit

const differs = (stated: KnownUnit, near: KnownUnit): Remark =>
  cellText('log-unit-differs', { heading: shown(near.unit), stated: shown(stated.unit) })

/** A unit in brackets counts whatever it measures; a last word of another quantity is a word. */
function headingUnit(heading: string, quantity: QuantityKind): KnownUnit | undefined {
  const { unit } = statedUnit(heading)
  const bracket = lastBracket(heading)?.unit
  return unit?.kind === quantity || (bracket !== undefined && findUnit(bracket)) ? unit : undefined
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

/** Reports a cell that cannot be read. */
export function refuseLooked(
  { code, message, fault, address }: Extract<Looked, { state: 'refused' }>,
  collector: Collector,
  path: string,
): void {
  collector.refuse(code, message, address, path, fault === undefined ? {} : { fault })
}

/** Reports what was seen and passes on the value, as the field at its final path. */
export function settle(looked: Looked, collector: Collector, path: string): number | string | undefined {
  if (looked.state !== 'blank') collector.cells[path] = looked.address
  for (const remark of looked.remarks) collector.tell(remark, looked.address, path)
  if (looked.state === 'value') return looked.value
  if (looked.state === 'refused') refuseLooked(looked, collector, path)
  if (looked.state === 'struck')
    collector.tell(cellText('log-struck-through', { what: 'cell' }), looked.address, path)
  if (looked.state === 'blank') {
    collector.cells[path] = looked.address
    collector.tell(cellText('log-blank', { what: 'cell' }), looked.address, path)
  }
  return undefined
}
