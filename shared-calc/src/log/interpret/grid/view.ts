import { addressOf, withSheet } from '../../grid/address.js'
import type { Sheet } from '../../grid/grid.js'
import { type Content, contentOf, type Surroundings } from './cell-content.js'

/** So much of a sheet is read as a log; a gauge's own series is longer and read elsewhere. */
export const READ = { rows: 2000, columns: 120 }

/** A sheet as the interpreter sees it: what each cell holds, upright or turned so that lines read as columns. */
export interface View {
  readonly sheet: Sheet
  readonly name: string
  readonly rows: number
  readonly columns: number
  readonly turned: boolean
  readonly date1904: boolean
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

/** The sheet upright. */
export function viewOf(sheet: Sheet, around: Surroundings): View {
  return view(sheet, around, false)
}

/** The same sheet with rows and columns exchanged. */
export function turned(upright: View, around: Surroundings): View {
  return view(upright.sheet, around, true)
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

function view(sheet: Sheet, around: Surroundings, isTurned: boolean): View {
  const known = new Map<number, Content | undefined>()
  const rows = Math.min(isTurned ? sheet.columns : sheet.rows, isTurned ? READ.columns : READ.rows)
  const columns = Math.min(isTurned ? sheet.rows : sheet.columns, isTurned ? READ.rows : READ.columns)
  const at = (row: number, column: number): Content | undefined => {
    if (row < 0 || column < 0 || row >= rows || column >= columns) return undefined
    const key = row * columns + column
    if (known.has(key)) return known.get(key)
    const cell = isTurned ? sheet.at(column, row) : sheet.at(row, column)
    const content = contentOf(cell, around)
    known.set(key, content)
    return content
  }
  return {
    sheet,
    name: sheet.name,
    rows,
    columns,
    turned: isTurned,
    date1904: around.date1904,
    ...cellsOf(at),
    address: (row, column) =>
      withSheet(sheet.name, isTurned ? addressOf(column, row) : addressOf(row, column)),
    hidden: (row, column) =>
      isTurned
        ? sheet.isRowHidden(column) || sheet.isColumnHidden(row)
        : sheet.isRowHidden(row) || sheet.isColumnHidden(column),
    comment: (row, column) => (isTurned ? sheet.commentAt?.(column, row) : sheet.commentAt?.(row, column)),
    right: (row, column) =>
      isTurned
        ? (sheet.mergeAt(column, row)?.bottom ?? column)
        : (sheet.mergeAt(row, column)?.right ?? column),
  }
}

/** The text nearest to the left of a number, past other numbers. */
export function leadOf(view: View, row: number, column: number, most = 3): string | undefined {
  for (let at = column - 1; at >= Math.max(0, column - most); at--) {
    const content = view.at(row, at)
    if (content?.kind === 'text') return content.text
    if (content?.kind !== 'number') return undefined
  }
  return undefined
}
