import { addressOf, parseAddress, withSheet } from '../grid/address.js'
import type { Sheet } from '../grid/grid.js'
import { refuse } from '../problem.js'
import { labelIndex } from './label-index.js'
import { labelMatcher } from './match.js'
import type { Locator } from './schema.js'
import { type Found, rowsOf, type Scope, sheetOf, textOf } from './scope.js'

/** Cells between a label and its value: units, colons, blanks of a form. */
const REACH = 6

/**
 * The cell a locator means within a test.
 * @throws LogError `not-found`, `ambiguous` (a label that is there twice), with the field's path
 */
export function locate(scope: Scope, at: Locator, path: string): Found {
  if ('cell' in at) {
    const place = parseAddress(at.cell)
    if (!place) refuse('layout-invalid', `${at.cell} is not a cell`, { path })
    const sheet = sheetOf(scope, at.sheet, path)
    return {
      sheet,
      row: place.row + (sheet === scope.sheet ? scope.shift : 0),
      column: place.column,
      named: true,
    }
  }
  if ('name' in at) return locateName(scope, at.name, path)
  if ('header' in at) return locateInRow(scope, at.header, at.nth, path)
  const sheet = sheetOf(scope, at.sheet, path)
  const label = findLabel(scope, sheet, at.label, at.nth, path)
  const heading = textOf(sheet.at(label.row, label.column)) ?? at.label
  const merged = sheet.mergeAt(label.row, label.column)
  if (at.side === 'below')
    return { sheet, row: (merged?.bottom ?? label.row) + 1, column: label.column, heading }
  const from = (merged?.right ?? label.column) + 1
  for (let column = from; column < from + REACH; column++)
    if (sheet.at(label.row, column) && textOf(sheet.at(label.row, column))?.trim() !== ':')
      return { sheet, row: label.row, column, heading }
  return { sheet, row: label.row, column: from, heading }
}

/** The one cell that reads as the label. Throws when there is none, or several and `nth` does not say which. */
export function findLabel(
  scope: Scope,
  sheet: Sheet,
  label: string,
  nth: number | undefined,
  path: string,
): { row: number; column: number } {
  const [top, bottom] = rowsOf(scope, sheet)
  return pick(allLabels(sheet, label, top, bottom), sheet, label, nth, path)
}

export function allLabels(
  sheet: Sheet,
  label: string,
  top: number,
  bottom: number,
): { row: number; column: number }[] {
  const fits = labelMatcher(label)
  const found: { row: number; column: number }[] = []
  for (const one of labelIndex(sheet))
    if (one.row >= top && one.row <= bottom && fits(one.heading)) found.push(one)
  return found
}

function pick(
  found: readonly { row: number; column: number }[],
  sheet: Sheet,
  label: string,
  nth: number | undefined,
  path: string,
): { row: number; column: number } {
  const chosen = found[(nth ?? 1) - 1]
  if (!chosen) {
    refuse(
      'not-found',
      found.length === 0
        ? `no cell of sheet ${sheet.name} reads "${label}"`
        : `sheet ${sheet.name} has "${label}" ${found.length === 1 ? 'once' : `${found.length} times`}, but the layout has "nth": ${nth}`,
      { path },
    )
  }
  if (nth === undefined && found.length > 1) {
    const cells = found.slice(0, 5).map(({ row, column }) => withSheet(sheet.name, addressOf(row, column)))
    refuse('ambiguous', `"${label}" is in ${cells.join(', ')}: state "nth" in the layout`, {
      path,
      cell: cells[0] as string,
    })
  }
  return chosen
}

/** The column under a heading of a table with one test per row or group: its cell in the test's first row. */
function locateInRow(scope: Scope, header: string, nth: number | undefined, path: string): Found {
  const { sheet, headerRow, rows } = scope
  if (headerRow === undefined || !rows)
    refuse('layout-invalid', 'a heading alone can locate a value only if the tests are in rows', { path })
  const { column } = pick(allLabels(sheet, header, headerRow, headerRow), sheet, header, nth, path)
  return { sheet, row: rows[0] ?? headerRow, column, heading: textOf(sheet.at(headerRow, column)) ?? header }
}

function locateName(scope: Scope, name: string, path: string): Found {
  const { sheet, block } = namedBlock(scope, name, path)
  return { sheet, row: block.top, column: block.left, named: true }
}

/** The block a workbook's name stands for. @throws LogError `not-found` */
export function namedBlock(scope: Scope, name: string, path: string) {
  const named = scope.grid.names.find((one) => one.name.toLowerCase() === name.toLowerCase())
  if (!named) refuse('not-found', `the workbook defines no name "${name}" for cells`, { path })
  return { sheet: sheetOf(scope, named.sheet, path), block: named.block }
}
