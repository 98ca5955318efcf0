import { type Block, parseBlock } from '../grid/address.js'
import type { Sheet } from '../grid/grid.js'
import { refuse } from '../problem.js'
import { allLabels, findLabel, namedBlock } from './locate.js'
import type { ListLocator } from './schema.js'
import { type Scope, sheetOf, textOf } from './scope.js'

/** A line of cells: explicit, or open-ended from a start. */
export interface List {
  sheet: Sheet
  heading?: string
  /** Its cells, or the first of them, where what heads them is looked for around it. */
  block?: Block
  /** The nth place of the line; undefined past its end. An open-ended line runs on to the sheet's edge. */
  place(index: number): { row: number; column: number } | undefined
  /** Ends where the cells end; otherwise it has as many places as it says. */
  open: boolean
}

/**
 * The line of cells a locator means within a test.
 * @param anyShape - whether it may be a block, which is read line by line: of values whose order does not matter
 * @throws LogError `not-found`, `ambiguous`, `layout-invalid`
 */
export function findList(scope: Scope, at: ListLocator, path: string, anyShape = false): List {
  if ('range' in at) {
    const block = parseBlock(at.range)
    if (!block) refuse('layout-invalid', `${at.range} is not a range of cells`, { path })
    const sheet = sheetOf(scope, at.sheet, path)
    return fromBlock(sheet, block, sheet === scope.sheet ? scope.shift : 0, path, anyShape)
  }
  if ('name' in at) {
    const { sheet, block } = namedBlock(scope, at.name, path)
    return fromBlock(sheet, block, 0, path, anyShape)
  }
  if ('headers' in at) return acrossHeaders(scope, at.headers, path)
  if ('header' in at) {
    if (scope.headerRow !== undefined && scope.rows) return inGroup(scope, at.header, at.nth, path)
    const sheet = sheetOf(scope, at.sheet, path)
    const head = findLabel(scope, sheet, at.header, at.nth, path)
    const first = (sheet.mergeAt(head.row, head.column)?.bottom ?? head.row) + 1 + at.skip
    const last = sheet === scope.sheet ? scope.bottom : sheet.rows - 1
    return {
      sheet,
      heading: textOf(sheet.at(head.row, head.column)) ?? at.header,
      // A row of units may come between the heading and the numbers.
      block: { top: first, bottom: first + 1, left: head.column, right: head.column },
      place: (index) => (first + index <= last ? { row: first + index, column: head.column } : undefined),
      open: true,
    }
  }
  const sheet = sheetOf(scope, at.sheet, path)
  const label = findLabel(scope, sheet, at.label, at.nth, path)
  const first = (sheet.mergeAt(label.row, label.column)?.right ?? label.column) + 1
  return {
    sheet,
    heading: textOf(sheet.at(label.row, label.column)) ?? at.label,
    place: (index) => (first + index < sheet.columns ? { row: label.row, column: first + index } : undefined),
    open: true,
  }
}

function fromBlock(sheet: Sheet, block: Block, shift: number, path: string, anyShape: boolean): List {
  const rows = block.bottom - block.top + 1
  const columns = block.right - block.left + 1
  if (rows > 1 && columns > 1 && !anyShape)
    refuse('layout-invalid', 'a list must be one row or one column of cells', { path })
  return {
    sheet,
    block: { ...block, top: block.top + shift, bottom: block.bottom + shift },
    place: (index) =>
      index >= rows * columns
        ? undefined
        : {
            row: block.top + shift + Math.floor(index / columns),
            column: block.left + (index % columns),
          },
    open: false,
  }
}

function acrossHeaders(scope: Scope, headers: string | readonly string[], path: string): List {
  const { sheet, headerRow, rows } = scope
  if (headerRow === undefined || !rows)
    refuse('layout-invalid', 'headings can be a list only if the tests are in rows', { path })
  const wanted = typeof headers === 'string' ? [headers] : headers
  const columns = wanted.flatMap((header) => {
    const found = allLabels(sheet, header, headerRow, headerRow).map(({ column }) => column)
    if (found.length === 0)
      refuse('not-found', `no heading of row ${headerRow + 1} of sheet ${sheet.name} reads "${header}"`, {
        path,
      })
    return found
  })
  const heading = textOf(sheet.at(headerRow, columns[0] ?? 0))
  return {
    sheet,
    ...(heading === undefined ? {} : { heading }),
    place: (index) => {
      const column = columns[index]
      return column === undefined ? undefined : { row: rows[0] ?? headerRow, column }
    },
    open: false,
  }
}

function inGroup(scope: Scope, header: string, nth: number | undefined, path: string): List {
  const { sheet, headerRow = 0, rows = [] } = scope
  const found = allLabels(sheet, header, headerRow, headerRow)
  const chosen = found[(nth ?? 1) - 1]
  if (!chosen)
    refuse('not-found', `no heading of row ${headerRow + 1} of sheet ${sheet.name} reads "${header}"`, {
      path,
    })
  if (found.length > 1 && nth === undefined)
    refuse(
      'ambiguous',
      `row ${headerRow + 1} of sheet ${sheet.name} has "${header}" ${found.length} times: state "nth" in the layout`,
      { path },
    )
  return {
    sheet,
    heading: textOf(sheet.at(headerRow, chosen.column)) ?? header,
    place: (index) => {
      const row = rows[index]
      return row === undefined ? undefined : { row, column: chosen.column }
    },
    open: false,
  }
}
