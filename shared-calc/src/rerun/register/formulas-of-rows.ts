import { addressOf, parseAddress, withSheet } from '../../log/grid/address.js'
import type { Sheet } from '../../log/grid/grid.js'
import { FIRST_ROW, headInWords } from '../../reports/register/workbook/columns.js'
import { type ColumnPlaces, formulaAt, workedColumns } from '../../reports/register/workbook/quoted.js'
import { shownFormulas } from '../../reports/register/workbook/register-sheet.js'
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
        `formula of "${headInWords(column.head)}"`,
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

/** The formulas of the line "shown"; rows may have been added to the range or deleted from it. */
export function formulasOfHead(sheet: Sheet, rows: number): ComparedFormulas {
  const shown = Object.values(shownFormulas(FIRST_ROW + rows))
  // A range of one row is written C7:C7 by one program and C7 by another.
  const anyRows = (formula: string) =>
    comparableFormula(formula).replace(/\$?(\b[A-Z]{1,3})\$?\d+(?::\$?\1\$?\d+)?/g, '$1#')
  const differences = shown.flatMap(({ cell, formula }) => {
    const at = parseAddress(cell)
    if (!at) return []
    const found = sheet.at(at.row, at.column)?.formula
    return found !== undefined && anyRows(found) === anyRows(formula)
      ? []
      : formulaDifference(sheet, at.row, at.column, formula, 'formula of the line "shown"')
  })
  return { cells: shown.length, differences }
}
