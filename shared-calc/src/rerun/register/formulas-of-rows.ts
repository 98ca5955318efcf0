import { addressOf, withSheet } from '../../log/grid/address.js'
import type { Sheet } from '../../log/grid/grid.js'
import { headInWords } from '../../reports/register/workbook/columns.js'
import { type ColumnPlaces, formulaAt, workedColumns } from '../../reports/register/workbook/quoted.js'
import { comparableFormula } from '../formula-text.js'
import type { Difference, QuotedRow } from '../report.js'

export interface ComparedFormulas {
  readonly cells: number
  readonly differences: readonly Difference[]
}

/** Margins, verdicts and the like are formulas in every row of a register, wherever sorting has put it. */
export function formulasOfRows(
  sheet: Sheet,
  rows: readonly QuotedRow[],
  places: ColumnPlaces,
): ComparedFormulas {
  const differences = rows.flatMap(({ row }) =>
    workedColumns.flatMap((column) =>
      formulaDifference(
        sheet,
        row,
        places[column.key] ?? 0,
        formulaAt(column, row, places),
        `formula of “${headInWords(column.head)}”`,
      ),
    ),
  )
  return { cells: rows.length * workedColumns.length, differences }
}

/** What is wrong with a cell, counted from 0, that should hold a formula. */
export function formulaDifference(
  sheet: Sheet,
  row: number,
  column: number,
  expected: string | undefined,
  label: string,
): Difference[] {
  const cell = sheet.at(row, column)
  const same = (found: string, wanted: string) => comparableFormula(found) === comparableFormula(wanted)
  if (expected === undefined || (cell?.formula !== undefined && same(cell.formula, expected))) return []
  return [
    {
      kind: 'formula',
      label,
      cell: withSheet(sheet.name, addressOf(row, column)),
      recorded: cell?.formula === undefined ? (cell?.value ?? null) : `=${cell.formula}`,
      expected: `=${expected}`,
      rounding: false,
    },
  ]
}
