import { changedTable, type TableChange } from './change-table.js'
import { AREA, BAROMETER, FLOW, LENGTH, PRESSURE, TEMPERATURE, type Unit, VOLUME } from './units.js'
import type { Cell, Sheet } from './write/sheet.js'

/** One thing that somebody does to a log. */
export type Change =
  | TableChange
  | { readonly kind: 'unit'; readonly which: number; readonly to: number }
  | { readonly kind: 'swap columns'; readonly one: number; readonly other: number }
  | { readonly kind: 'total row' | 'title' | 'blank row' | 'notes' | 'hidden column'; readonly at: number }
  | { readonly kind: 'turned' | 'decimal commas' | 'brackets' | 'renamed sheet' }

const KINDS: readonly (readonly Unit[])[] = [
  FLOW,
  PRESSURE,
  VOLUME,
  AREA,
  LENGTH,
  TEMPERATURE,
  BAROMETER,
].map((units) => Object.values(units))

/** How a changed unit word changes what the figures below or beside it mean. */
export interface Restated {
  readonly from: Unit
  readonly to: Unit
}

/** The sheet after the change, with the unit that was restated; undefined where the change does not apply. */
export function changed(sheet: Sheet, change: Change): { sheet: Sheet; restated?: Restated } | undefined {
  switch (change.kind) {
    case 'unit':
      return withUnit(sheet, change.which, change.to)
    case 'swap columns':
      return { sheet: withSwappedColumns(sheet, change.one, change.other) }
    case 'blank row':
      return { sheet: withRowAt(sheet, change.at) }
    case 'title':
      return { sheet: withTitle(sheet) }
    case 'total row':
      return withTotal(sheet)
    case 'notes':
      return { sheet: withNotes(sheet, change.at) }
    case 'hidden column': {
      const copy = sheet.moved((row, column) => [row, column])
      copy.hiddenColumns.add(1 + (change.at % sheet.size.columns))
      return { sheet: copy }
    }
    case 'turned':
      return { sheet: sheet.moved((row, column) => [column, row]) }
    case 'decimal commas':
      return { sheet: withNumbersAs(sheet, (value) => String(value).replace('.', ',')) }
    case 'brackets':
      return { sheet: withNumbersAs(sheet, (value) => (value < 0 ? `(${String(-value)})` : value)) }
    case 'renamed sheet': {
      const copy = sheet.moved((row, column) => [row, column], 'Tabelle1 (2)')
      return { sheet: copy }
    }
    default: {
      const copy = changedTable(sheet, change)
      return copy && { sheet: copy }
    }
  }
}

/** Words in brackets that are a unit, in the order of the sheet. */
function unitWords(sheet: Sheet): { key: string; cell: Cell; kind: readonly Unit[]; unit: Unit }[] {
  return [...sheet.cells].flatMap(([key, cell]) => {
    const symbol = /[([]([^()[\]]+)[)\]]$/.exec(String(cell.value))?.[1]
    const kind = KINDS.find((units) => units.some((unit) => unit.symbol === symbol))
    const unit = kind?.find((one) => one.symbol === symbol)
    return kind && unit ? [{ key, cell, kind, unit }] : []
  })
}

function withUnit(sheet: Sheet, which: number, to: number) {
  const found = unitWords(sheet)
  const word = found[which % found.length]
  if (!word) return undefined
  const others = word.kind.filter(({ symbol }) => symbol !== word.unit.symbol)
  const unit = others[to % Math.max(1, others.length)]
  if (!unit) return undefined
  const copy = sheet.moved((row, column) => [row, column])
  copy.cells.set(word.key, {
    ...word.cell,
    value: String(word.cell.value).replace(word.unit.symbol, unit.symbol),
  })
  return { sheet: copy, restated: { from: word.unit, to: unit } }
}

function withSwappedColumns(sheet: Sheet, one: number, other: number): Sheet {
  const { columns } = sheet.size
  const [a, b] = [1 + (one % columns), 1 + (other % columns)]
  return sheet.moved((row, column) => [row, column === a ? b : column === b ? a : column])
}

function withRowAt(sheet: Sheet, at: number): Sheet {
  const row_ = 2 + (at % sheet.size.rows)
  return sheet.moved((row, column) => [row >= row_ ? row + 1 : row, column])
}

function withTitle(sheet: Sheet): Sheet {
  const copy = sheet.moved((row, column) => [row + 2, column])
  copy.put(1, 1, 'Job 26/417: air test for the file, n50 and q50 to be agreed')
  return copy
}

/** Below the last numbers of the sheet, the sum of each column of numbers of three and more. */
function withTotal(sheet: Sheet) {
  const { rows, columns } = sheet.size
  const numberAt = (row: number, column: number) => {
    const value = sheet.at(row, column)?.value
    return typeof value === 'number' ? value : undefined
  }
  const copy = sheet.moved((row, column) => [row, column])
  let put = false
  for (let column = 1; column <= columns; column++) {
    let last = rows
    while (last > 0 && numberAt(last, column) === undefined) last--
    const values: number[] = []
    for (let row = last; numberAt(row, column) !== undefined; row--)
      values.push(numberAt(row, column) as number)
    if (values.length < 3 || sheet.at(last + 1, column)) continue
    const sum = Number(values.reduce((total, value) => total + value, 0).toFixed(2))
    copy.put(last + 1, column, put ? sum : 'Total')
    put = true
  }
  return put ? { sheet: copy } : undefined
}

/** A column of remarks before one of the columns. */
function withNotes(sheet: Sheet, at: number): Sheet {
  const { rows, columns } = sheet.size
  const place = 1 + (at % (columns + 1))
  const copy = sheet.moved((row, column) => [row, column >= place ? column + 1 : column])
  for (let row = rows - 4; row <= rows; row += 2)
    copy.put(row, place, row % 4 === 0 ? 'calm' : 'a little wind')
  return copy
}

/** Every plain number as a person may type it instead. */
function withNumbersAs(sheet: Sheet, typed: (value: number) => string | number): Sheet {
  const copy = sheet.moved((row, column) => [row, column])
  for (const [key, cell] of sheet.cells)
    if (typeof cell.value === 'number' && cell.format === undefined)
      copy.cells.set(key, { ...cell, value: typed(cell.value) })
  return copy
}
