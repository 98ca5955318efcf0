import type { Cell, Worksheet } from 'exceljs'
import { expectedCell } from './expected-cell.js'

const LONGEST = 80
/** How many rows above a cell a text may be that it is named by. */
const NEAR = 2

/** What a cell of the issued workbook is about: the nearest text to its left, and the head of its column in a table. */
export function cellLabel(sheet: Worksheet, row: number, column: number): string | undefined {
  const left = nearest(column, (at) => wordsAt(sheet, row, at))
  const head = nearest(row, (at) => headAt(sheet, at, column))
  const own = wordsAt(sheet, row, column)
  const above =
    left ?? own ?? nearest(row, (at) => (row - at > NEAR ? undefined : wordsAt(sheet, at, column)))
  const words = [above, head].filter((text) => text !== undefined && text !== '')
  return words.length > 0 ? words.join(', ') : undefined
}

/** The first text found going back from a place, counted from 0. */
function nearest(from: number, textAt: (index: number) => string | undefined): string | undefined {
  for (let at = from - 1; at >= 0; at -= 1) {
    const text = textAt(at)
    if (text !== undefined) return text
  }
  return undefined
}

function wordsAt(sheet: Worksheet, row: number, column: number): string | undefined {
  const cell = sheet.findCell(row + 1, column + 1)
  const content = cell && expectedCell(cell)
  return typeof content?.value === 'string' &&
    content.formula === undefined &&
    content.value !== '' &&
    content.value.length <= LONGEST
    ? content.value.replace(/\s+/g, ' ').trim()
    : undefined
}

/** A text in a cell with the background of headings, beside the first column: the head of a table's column. */
function headAt(sheet: Worksheet, row: number, column: number): string | undefined {
  if (column === 0) return undefined
  const cell = sheet.findCell(row + 1, column + 1)
  if (!cell || !isHeading(cell)) return undefined
  return wordsAt(sheet, row, column) ?? ''
}

const isHeading = ({ fill, font }: Cell): boolean => fill?.type === 'pattern' && font?.bold === true
