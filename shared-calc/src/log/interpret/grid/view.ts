import { bareUnit } from '../../cells/stated-unit.js'
import { addressOf, type Place, parseAddress, withoutSheet, withSheet } from '../../grid/address.js'
import type { Sheet } from '../../grid/grid.js'
import { type Content, contentOf, type Surroundings } from './cell-content.js'
import { type Lines, linesOf, placeInSheet, placeInView } from './lines.js'

/** So much of a sheet is read as a log; a gauge's own series is longer and read elsewhere. */
export const READ = { rows: 2000, columns: 120 }

/** So much of a sheet is gone through for what people write into a form: labels, remarks, a method's name. */
const FORM = { rows: 300, columns: 40 }

/** Places of the part of a sheet where a form stands, row by row. */
export function* formPlaces(view: View, most = FORM): Generator<readonly [row: number, column: number]> {
  for (let row = 0; row < Math.min(view.rows, most.rows); row++)
    for (let column = 0; column < Math.min(view.columns, most.columns); column++) yield [row, column]
}

/** A sheet as the interpreter sees it: what each cell holds, upright or turned so that lines read as columns. */
export interface View {
  readonly sheet: Sheet
  readonly name: string
  readonly rows: number
  readonly columns: number
  readonly turned: boolean
  /** Rows and columns of the sheet as they are read, upright. */
  readonly lines: Lines
  readonly date1904: boolean
  /** Decimal sign of numbers written as text, where the log proves one. */
  readonly decimal: '.' | ',' | undefined
  /** What a cell of the sheet itself holds, however this view shows it. */
  held(row: number, column: number): Content | undefined
  at(row: number, column: number): Content | undefined
  text(row: number, column: number): string | undefined
  number(row: number, column: number): number | undefined
  address(row: number, column: number): string
  hidden(row: number, column: number): boolean
  /** The remark attached to a cell. */
  comment(row: number, column: number): string | undefined
  /** Last column of the merged block a cell begins or belongs to; the column itself without one. */
  right(row: number, column: number): number
}

/** Rows and columns of what is read of a sheet: one past the last that hold something there. A single cell far out makes no sheet large. */
function extentOf(sheet: Sheet): { rows: number; columns: number } {
  const most = { rows: Math.min(sheet.rows, READ.rows), columns: Math.min(sheet.columns, READ.columns) }
  const isWhole = sheet.rows <= READ.rows && sheet.columns <= READ.columns
  if (isWhole || !sheet.cells) return most
  const extent = { rows: 0, columns: 0 }
  for (const [row, column] of sheet.cells()) {
    if (row >= most.rows || column >= most.columns) continue
    extent.rows = Math.max(extent.rows, row + 1)
    extent.columns = Math.max(extent.columns, column + 1)
  }
  return extent
}

/** The sheet upright. */
export function viewOf(sheet: Sheet, around: Surroundings): View {
  const lines = linesOf(sheet, extentOf(sheet))
  const [rows, columns] = [lines.rows.length, lines.columns.length]
  const known: (Content | null | undefined)[] = []
  const held = (row: number, column: number): Content | undefined => {
    if (row < 0 || column < 0 || row >= rows || column >= columns) return undefined
    const key = row * columns + column
    const before = known[key]
    if (before !== undefined) return before ?? undefined
    const content = contentOf(sheet.at(lines.rows[row] as number, lines.columns[column] as number), around)
    known[key] = content ?? null
    return content
  }
  return {
    sheet,
    name: sheet.name,
    rows,
    columns,
    turned: false,
    lines,
    date1904: around.date1904,
    decimal: around.decimal,
    held,
    ...cellsOf(held),
    ...ofSheet(sheet, lines),
  }
}

/** What the sheet says of the cells at these lines. */
function ofSheet(sheet: Sheet, lines: Lines): Pick<View, 'address' | 'hidden' | 'comment' | 'right'> {
  const place = (row: number, column: number) => placeInSheet(lines, row, column)
  return {
    address: (row, column) => {
      const own = place(row, column)
      return withSheet(sheet.name, addressOf(own.row, own.column))
    },
    hidden: (row, column) => {
      const own = place(row, column)
      return sheet.isRowHidden(own.row) || sheet.isColumnHidden(own.column)
    },
    comment: (row, column) => {
      const own = place(row, column)
      return sheet.commentAt?.(own.row, own.column)
    },
    right: (row, column) => endOf(sheet, lines, row, column).column,
  }
}

/** Last row and column of the merged block that a cell begins or belongs to; its own without one. */
function endOf(sheet: Sheet, lines: Lines, row: number, column: number): Place {
  const own = placeInSheet(lines, row, column)
  const block = sheet.mergeAt(own.row, own.column)
  return block ? placeInView(lines, { row: block.bottom, column: block.right }) : { row, column }
}

/** The same sheet with rows and columns exchanged. */
export function turned({ sheet, name, lines, date1904, decimal, held }: View): View {
  const upright = ofSheet(sheet, lines)
  return {
    sheet,
    name,
    rows: lines.columns.length,
    columns: lines.rows.length,
    turned: true,
    lines,
    date1904,
    decimal,
    held,
    ...cellsOf((row, column) => held(column, row)),
    address: (row, column) => upright.address(column, row),
    hidden: (row, column) => upright.hidden(column, row),
    comment: (row, column) => upright.comment(column, row),
    right: (row, column) => endOf(sheet, lines, column, row).row,
  }
}

/** Where a cell of the sheet, by its address, stands in an upright view of it. */
export function placeIn({ lines }: View, cell: string): Place | undefined {
  const place = parseAddress(withoutSheet(cell))
  return place && placeInView(lines, place)
}

/** What a view shows of its cells, from what each holds. */
export const cellsOf = (at: View['at']): Pick<View, 'at' | 'text' | 'number'> => ({
  at,
  text: (row, column) => {
    const content = at(row, column)
    return content?.kind === 'text' ? content.text : undefined
  },
  number: (row, column) => {
    const content = at(row, column)
    return content?.kind === 'number' ? content.written.value : undefined
  },
})

/** The text nearest to the left of a number, past other numbers. */
export function leadOf(view: View, row: number, column: number, most = 3): string | undefined {
  for (let at = column - 1; at >= Math.max(0, column - most); at--) {
    const content = view.at(row, at)
    if (content?.kind === 'text' && bareUnit(content.text) === undefined) return content.text
    if (content?.kind !== 'number' && content?.kind !== 'text') return undefined
  }
  return undefined
}
