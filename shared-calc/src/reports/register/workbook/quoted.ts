import { columnLetters } from '../../../log/grid/address.js'
import type { Cell, Sheet } from '../../../log/grid/grid.js'
import type { RegisterRow } from '../arrange.js'
import type { TestLine } from '../test-line.js'
import { type CellContent, columns, type RegisterColumn } from './columns.js'

/** What a register shows of one test, by the key of its column; dates as 2026-10-14. */
export type Quoted = Readonly<Record<string, string | number>>

/** For columns that depend on where the register is written. */
const NOWHERE = { asOf: '2000-01-01', seenFrom: (file: string) => file }

/** Where each column of a register stands in a file, counted from 0, by its key. */
export type ColumnPlaces = Readonly<Record<string, number>>

/** Columns that follow from one test alone; the others depend on the tests beside it, or on the office's own lists. */
const OF_ONE_TEST = new Set([
  'site',
  'plot',
  'stage',
  'date',
  'tester',
  'n50',
  'qE50',
  'qF50',
  'q50',
  'ela4',
  'judged',
  'value',
  'limit',
  'verdict',
  'findings',
  'invalidating',
  'client',
  'number',
  'target',
  'version',
])

export const quotedColumns: readonly RegisterColumn[] = columns.filter(({ key }) => OF_ONE_TEST.has(key))

/** Columns that a register works out itself. */
export const workedColumns: readonly RegisterColumn[] = columns.filter(
  ({ content }) => formulaIn(content(blankRow(), () => 'A1', NOWHERE)) !== undefined,
)

/** Enough of a row for the columns that hold formulas: these are the same for every test. */
function blankRow(): RegisterRow {
  return {
    file: '',
    source: 'summary workbook',
    building: '',
    date: '2000-01-01',
    recordDigest: '',
    readingsDigest: '',
    calculationVersion: '',
    results: {},
    outcome: 'no target',
    findings: [],
    gauge: {},
    device: {},
    curves: [],
    row: 1,
    role: 'first test',
    counts: true,
    latest: true,
  }
}

/** The formula a column has in a row, counted from 0. */
export const formulaAt = (column: RegisterColumn, row: number, places: ColumnPlaces): string | undefined =>
  formulaIn(column.content(blankRow(), (key) => `$${columnLetters(places[key] ?? 0)}${row + 1}`, NOWHERE))

function formulaIn(content: CellContent): string | undefined {
  return typeof content === 'object' && content !== null && 'formula' in content ? content.formula : undefined
}

/** What a register shows of a test whose summary is as issued. */
export function quotedOf(line: TestLine): Quoted {
  const row = { ...blankRow(), ...line }
  return Object.fromEntries(
    quotedColumns.flatMap(({ key, content }): [string, string | number][] => {
      const shown = content(row, () => 'A1', NOWHERE)
      if (shown === null || shown === '') return []
      if (shown instanceof Date) return [[key, shown.toISOString().slice(0, 10)]]
      if (typeof shown !== 'object') return [[key, shown]]
      return 'result' in shown ? [[key, shown.result]] : [[key, shown.text]]
    }),
  )
}

const MS_OF_DAY = 86_400_000
/** Day 0 of serial dates, for those after February 1900 (ECMA-376 part 1, 18.17.4.1). */
const SERIAL_ZERO = Date.UTC(1899, 11, 30)

/** Columns read back beside those of one test: the file, the class, and what the totals count. */
const OTHERS = ['file', 'role', 'counts', 'billed', 'retest']

/** The same read back from a row of a sheet, counted from 0, with what {@link OTHERS} names. */
export function quotedIn(sheet: Sheet, row: number, places: ColumnPlaces): Quoted {
  return Object.fromEntries(
    [...OF_ONE_TEST, ...OTHERS].flatMap((key): [string, string | number][] => {
      const column = places[key]
      const cell = column === undefined ? undefined : sheet.at(row, column)
      const value = cell && contentOf(key, cell)
      return value === undefined || value === '' ? [] : [[key, value]]
    }),
  )
}

/** A serial date as 2026-10-14; undefined for anything else. */
export const dateIn = (value: Cell['value'] | undefined): string | undefined =>
  typeof value === 'number' && value > 0 && value < MOST_DAYS
    ? new Date(SERIAL_ZERO + value * MS_OF_DAY).toISOString().slice(0, 10)
    : undefined

/** The year 9999, the last that a spreadsheet dates. */
const MOST_DAYS = 2_958_466

function contentOf(key: string, { value }: Cell): string | number {
  if (key === 'date') return dateIn(value) ?? String(value)
  return typeof value === 'boolean' ? String(value) : value
}
