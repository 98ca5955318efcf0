import type { Worksheet } from 'exceljs'
import { addressOf, withSheet } from '../log/grid/address.js'
import { type Cell, eachCell, type Grid, type Sheet } from '../log/grid/grid.js'
import { computedAgrees, typedAgrees } from './agreement.js'
import { cellLabel } from './cell-label.js'
import { type ExpectedCell, expectedCell } from './expected-cell.js'
import { comparableFormula } from './formula-text.js'
import type { Difference } from './report.js'

/** Address of an input (`Readings!B12`) → field of the record it holds. */
export type InputCells = ReadonlyMap<string, string>

export interface ComparedCells {
  readonly cells: number
  readonly differences: Difference[]
}

/** Compares the contents of every cell of an archived summary with what the writer would write. @param floor - below which numbers that were worked out count as zero */
export function compareSheets(
  grid: Grid,
  written: readonly Worksheet[],
  inputs: InputCells,
  floor?: number,
): ComparedCells {
  const differences: Difference[] = []
  let cells = 0
  const sheets = written.flatMap(({ name }) => {
    const sheet = grid.sheetNames.includes(name) ? grid.sheet(name) : undefined
    return sheet ? [sheet] : []
  })
  const count = formulasWithoutResults(sheets)
  if (count > 0) differences.push(withoutResults(count))
  for (const sheet of written) {
    const found = sheets.find(({ name }) => name === sheet.name)
    if (found) cells += compareSheet(found, sheet, inputs, differences, floor, count > 0)
    else differences.push(lost(sheet.name))
  }
  return { cells, differences }
}

/**
 * How many formulas a file has none of whose results is stored: the program that saved it works nothing out. 0 where one result is
 * there: then each that is missing is named.
 */
function formulasWithoutResults(sheets: readonly Sheet[]): number {
  let count = 0
  for (const sheet of sheets)
    for (const [, , { formula, kind }] of eachCell(sheet))
      if (kind === 'unstored') count += 1
      else if (formula !== undefined) return 0
  return count > 1 ? count : 0
}

const withoutResults = (count: number): Difference => ({
  kind: 'workbook',
  label: 'results of formulas, which the program that saved the file left out',
  recorded: 'none',
  expected: count,
  rounding: false,
})

const lost = (name: string): Difference => ({
  kind: 'sheet',
  label: `sheet ${name} is missing`,
  cell: name,
  recorded: null,
  expected: name,
  rounding: false,
})

function compareSheet(
  found: Sheet,
  written: Worksheet,
  inputs: InputCells,
  into: Difference[],
  floor: number | undefined,
  noResults: boolean,
): number {
  const places = placesOf(found, written)
  for (const { row, column, cell, expected } of places) {
    if (cell && expected && isSame(cell, expected)) continue
    if (noResults && cell?.kind === 'unstored' && expected && !compareFormula(cell, expected)) continue
    const address = withSheet(found.name, addressOf(row, column))
    const label = () => cellLabel(written, row, column)
    into.push(...compareCell(cell, expected, address, inputs.get(address), label, floor))
  }
  return places.length
}

interface Place {
  readonly row: number
  readonly column: number
  cell?: Cell
  readonly expected?: ExpectedCell
}

/** Most columns of a sheet (ECMA-376 part 1, 18.3.1.4). */
const MOST_COLUMNS = 16_384

/**
 * Places that hold something in either, row by row. Only those: one cell in the last row and column makes a sheet of seventeen
 * thousand million places.
 */
function placesOf(found: Sheet, written: Worksheet): Place[] {
  const places = new Map<number, Place>()
  for (let row = 0; row < written.rowCount; row += 1) {
    const line = written.findRow(row + 1)
    for (let column = 0; line && column < line.cellCount; column += 1) {
      const cell = line.findCell(column + 1)
      const expected = cell && expectedCell(cell)
      if (expected) places.set(row * MOST_COLUMNS + column, { row, column, expected })
    }
  }
  let further = 0
  for (const [row, column, cell] of eachCell(found)) {
    const place = places.get(row * MOST_COLUMNS + column)
    if (place) place.cell = cell
    else {
      places.set(row * MOST_COLUMNS + column, { row, column, cell })
      further += 1
    }
  }
  const all = [...places.values()]
  return further === 0 ? all : all.sort((a, b) => a.row - b.row || a.column - b.column)
}

/** Most cells: content and formula to the letter. */
const isSame = (cell: Cell, { value, formula }: ExpectedCell): boolean =>
  cell.value === value && cell.formula === formula && cell.kind === KINDS[typeof value as keyof typeof KINDS]

const KINDS = { number: 'number', string: 'text', boolean: 'boolean' } as const

/** Everything that differs between a cell found and the cell expected. @param field - the record's field it holds @param about - finds what its row is about */
export function compareCell(
  cell: Cell | undefined,
  expected: ExpectedCell | undefined,
  address: string,
  field?: string,
  about?: () => string | undefined,
  floor?: number,
): Difference[] {
  const place = { cell: address, ...(field !== undefined && { path: field }) }
  const kind = field === undefined ? ('cell' as const) : ('input' as const)
  // Found only where something differs: it looks through the whole row.
  const label = () =>
    field ?? (expected ? (about?.() ?? `content of ${address}`) : `${address} should be empty`)
  if (!cell || !expected) {
    // A formula that gives an empty text may be stored without a result: there is nothing to see either way.
    if (!cell && expected?.value === '' && expected.formula === undefined) return []
    const recorded = cell?.value ?? null
    return [{ kind, label: label(), ...place, recorded, expected: expected?.value ?? null, rounding: false }]
  }
  const differences: Difference[] = []
  const value = compareValue(cell, expected, field !== undefined, floor)
  if (value) differences.push({ kind, label: label(), ...place, ...value })
  const formula = compareFormula(cell, expected)
  if (formula)
    differences.push({
      kind: 'formula',
      label: `formula of ${address}`,
      ...place,
      ...formula,
      rounding: false,
    })
  return differences
}

type Compared = Pick<Difference, 'recorded' | 'expected'>

/** @param logged - a field of the record: any other number that is no formula was worked out when the file was written, as the recorded figures are */
function compareValue(
  cell: Cell,
  expected: ExpectedCell,
  logged: boolean,
  floor: number | undefined,
): (Compared & Pick<Difference, 'rounding' | 'change'>) | undefined {
  const found = cell.value
  const pair = { recorded: found, expected: expected.value }
  if (cell.kind === 'number' && typeof found === 'number' && typeof expected.value === 'number') {
    const agreement = logged
      ? typedAgrees(found, expected.value)
      : // Nobody recalculates a number without a formula.
        computedAgrees(found, expected.value, expected.formula === undefined ? undefined : floor)
    if (agreement === 'same') return undefined
    return { ...pair, change: found - expected.value, rounding: agreement === 'rounding' }
  }
  if (cell.kind === 'unstored' && expected.value === '') return undefined
  if (cell.kind === 'error' && expected.kind === 'error' && found === expected.value) return undefined
  const sameKind = (cell.kind === 'boolean') === (typeof expected.value === 'boolean')
  if (sameKind && cell.kind !== 'error' && cell.kind !== 'number' && sameText(found, expected.value))
    return undefined
  return { ...pair, rounding: false }
}

/**
 * Line ends inside a text are stored as one program or the other likes them, and blanks at its ends may be lost. Blanks that were
 * added would push the text out of its cell.
 */
const sameText = (found: Cell['value'], expected: Cell['value']): boolean =>
  found === expected ||
  (typeof found === 'string' &&
    typeof expected === 'string' &&
    plainText(found) === plainText(expected) &&
    found.length - found.trimStart().length <= expected.length - expected.trimStart().length &&
    found.length - found.trimEnd().length <= expected.length - expected.trimEnd().length + 1)

const plainText = (text: string): string => text.replace(/\r\n?/g, '\n').trim()

function compareFormula(cell: Cell, expected: ExpectedCell): Compared | undefined {
  if (cell.formula === expected.formula) return undefined
  const found = cell.formula === undefined ? null : comparableFormula(cell.formula)
  const wanted = expected.formula === undefined ? null : comparableFormula(expected.formula)
  if (found === wanted) return undefined
  // Some programs keep a truth value as a formula that gives it.
  if (
    wanted === null &&
    typeof expected.value === 'boolean' &&
    found === String(expected.value).toUpperCase()
  )
    return undefined
  return {
    recorded: cell.formula === undefined ? null : `=${cell.formula}`,
    expected: expected.formula === undefined ? null : `=${expected.formula}`,
  }
}
