import { addressOf, columnLetters, withSheet } from '../../log/grid/address.js'
import type { Grid, Sheet } from '../../log/grid/grid.js'
import { type Grouping, groupings } from '../../reports/register/totals.js'
import type { ColumnPlaces } from '../../reports/register/workbook/quoted.js'
import {
  ALL_TESTS_ROW,
  headings,
  TOTALS_SHEET,
  totalFormula,
  totalHead,
} from '../../reports/register/workbook/totals-sheet.js'
import type { Difference, QuotedRow } from '../report.js'
import { type ComparedFormulas, formulaDifference } from './formulas-of-rows.js'

/** Totals are formulas over the register; those of all tests are counted again too, as programs may show a stored result. */
export function totalsOfRegister(
  grid: Grid,
  rows: readonly QuotedRow[],
  places: ColumnPlaces,
): ComparedFormulas {
  const sheet = grid.sheet(TOTALS_SHEET)
  if (!sheet) return { cells: 0, differences: [] }
  const lines = linesOf(sheet)
  const differences = lines.flatMap(({ row, grouping }) =>
    columnsOfTotals.flatMap((column) =>
      formulaDifference(
        sheet,
        row,
        column + 1,
        totalFormula(column, row + 1, rows.length, grouping, (key) => columnLetters(places[key] ?? 0)),
        `total "${headOf(column)}", ${String(sheet.at(row, 0)?.value ?? '')}`,
      ),
    ),
  )
  return {
    cells: lines.length * columnsOfTotals.length,
    differences: [...differences, ...storedCounts(sheet, rows)],
  }
}

const columnsOfTotals: readonly number[] = Array.from({ length: 64 }, (_, i) => i).filter(
  (column) => totalHead(column) !== undefined,
)

const headOf = (column: number): string => (totalHead(column) ?? '').replace(/\s+/g, ' ')

interface Line {
  /** Counted from 0. */
  readonly row: number
  readonly grouping?: Grouping
}

/** Rows of totals: of all tests, then of each block up to the first empty row. */
function linesOf(sheet: Sheet): Line[] {
  const lines: Line[] = [{ row: ALL_TESTS_ROW - 1 }]
  const textAt = (row: number) => sheet.at(row, 0)?.value
  for (let row = ALL_TESTS_ROW; row < sheet.rows; row += 1) {
    const grouping = groupings.find((one) => headings[one] === textAt(row))
    if (!grouping) continue
    for (row += 1; textAt(row) !== undefined; row += 1) lines.push({ row, grouping })
  }
  return lines
}

/** Counts of all tests as stored, against the rows of the register. */
function storedCounts(sheet: Sheet, rows: readonly QuotedRow[]): Difference[] {
  const counting = rows.filter(({ counts }) => counts)
  const judged = (verdict: string) => counting.filter(({ shown }) => shown.verdict === verdict).length
  const tally: Readonly<Record<string, number>> = {
    rows: rows.length,
    'included in totals': counting.length,
    meets: judged('meets'),
    fails: judged('fails'),
    'not valid': judged('not valid'),
    'no target': judged('no target'),
    'to bill': rows.filter(({ billed }) => billed).length,
    'still to be retested': rows.filter(({ retest }) => retest).length,
  }
  return columnsOfTotals.flatMap((column): Difference[] => {
    const expected = tally[headOf(column)]
    const found = sheet.at(ALL_TESTS_ROW - 1, column + 1)?.value
    if (expected === undefined || found === undefined || found === expected) return []
    return [
      {
        kind: 'cell',
        label: `total "${headOf(column)}" of all tests`,
        cell: withSheet(TOTALS_SHEET, addressOf(ALL_TESTS_ROW - 1, column + 1)),
        recorded: found,
        expected,
        rounding: false,
      },
    ]
  })
}
