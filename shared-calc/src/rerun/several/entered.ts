import { addressOf } from '../../log/grid/address.js'
import { eachCell, type Grid } from '../../log/grid/grid.js'
import type { Parts } from '../../reports/workbook/zip/parts.js'
import { Package } from '../look/package.js'
import { deep } from '../look/xml-tree.js'
import { numberAt, textAt } from './sheet-content.js'

/** What was entered for a report, as some place of its file says. Rows and columns are counted from 1. */
export interface Entered {
  readonly number: (sheet: string, row: number, column: number) => number | undefined
  readonly name: (sheet: string, row: number, column: number) => string
  /** Taken for what was entered, whatever its cell says. */
  readonly guess?: Guess
}

export interface Guess {
  readonly rule?: string
  readonly homesInBuilding?: number
}

/** As the cells say in which it was entered. */
export const asInCells = (grid: Grid): Entered => ({
  number: (sheet, row, column) => numberAt(grid.sheet(sheet), row, column),
  name: (sheet, row, column) => textAt(grid.sheet(sheet), row, column),
})

/**
 * As the rest of the file says: the stored results of formulas that show such a cell, and the title among the file's properties. Where
 * only the cell was changed, this is what was entered.
 */
export function asInResults(grid: Grid, parts: Parts): Entered {
  const cells = asInCells(grid)
  const shown = resultsShown(grid)
  const from = new Package(parts)
  const title = deep(from.tree('docProps/core.xml'), 'title')[0]?.text ?? ''
  return {
    number: (sheet, row, column) =>
      shown.get(`${sheet}!${addressOf(row - 1, column - 1)}`) ?? cells.number(sheet, row, column),
    name: (...place) =>
      title.includes(TITLED)
        ? title.slice(title.indexOf(TITLED) + TITLED.length).trim()
        : cells.name(...place),
  }
}

/** Between what a report is and what it is about. */
const TITLED = ': '

/** Cell → the result of a formula that is that cell alone, or a text with it in per cent. */
function resultsShown({ sheetNames, sheet }: Grid): ReadonlyMap<string, number> {
  const shown = new Map<string, number>()
  for (const name of sheetNames) {
    const found = sheet(name)
    if (!found) continue
    for (const [, , { formula, value }] of eachCell(found)) {
      if (formula === undefined) continue
      const cell = /^([A-Za-z]+!\$?[A-Z]{1,3}\$?\d{1,7})$/.exec(formula)?.[1]
      if (cell !== undefined && typeof value === 'number') shown.set(cell.replaceAll('$', ''), value)
      const share = /^"[a-z]+: "&ROUND\(100\*([A-Za-z]+!\$?[A-Z]{1,3}\$?\d{1,7}),0\)&" %"$/.exec(formula)?.[1]
      const percent = /(\d{1,3}) %$/.exec(String(value ?? ''))?.[1]
      const key = share?.replaceAll('$', '')
      if (key !== undefined && percent !== undefined && !shown.has(key)) shown.set(key, Number(percent) / 100)
    }
  }
  return shown
}
