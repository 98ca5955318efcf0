import type { CellValue, Worksheet } from 'exceljs'
import { dayInWords, months } from '../../catalogue/words.js'
import type { Block } from '../../engine/index.js'
import { type Address, reference } from './address.js'
import type { Places } from './places.js'
import { dress, fills, fonts, underline, wrap } from './styles.js'
import { wrappedLines } from './wrapped-lines.js'

/** What a cell of a table shows: text or a number as it is, or something that stands elsewhere in the workbook. */
export interface Shown {
  readonly value: CellValue
  readonly numFmt?: string
}

/** A probability, never shown as certainty. */
export const PROBABILITY_FORMAT = '[>0.99]"> 99 %";[<0.01]"< 1 %";0.0 %'

/** A value of a block, by reference to its cell on Working. */
export function live(
  places: Places,
  block: Block<string>,
  symbol: string,
  numFmt = '0.0',
  row?: number,
): Shown {
  const rows = row !== undefined
  return {
    value: {
      formula: reference(places.symbol(block.id, symbol, row ?? 0)),
      result: rows ? (block.column(symbol)[row] as number) : block.value(symbol),
    },
    numFmt,
  }
}

/** A field as logged, by reference to its cell; as text where it has none. */
export function logged(places: Places, path: string, value: string | number | boolean | undefined): Shown {
  if (value === undefined) return { value: '' }
  const cell = places.field(path)
  return { value: cell ? { formula: reference(cell), result: value } : value }
}

/** A field that holds a day, in words; nothing where it was not logged. */
export function loggedDay(places: Places, path: string, day: string | undefined): Shown | undefined {
  if (day === undefined) return undefined
  const cell = places.field(path)
  return { value: cell ? dayFrom(cell, day) : dayInWords(day) }
}

/** A logged day in words, live. */
export const dayFrom = (cell: Address, day: string): { formula: string; result: string } => ({
  formula: dateFormula(reference(cell)),
  result: dayInWords(day),
})

/** 2026-10-14 as 14 October 2026, as a live formula; TEXT would need the codes of the reader's language. */
const dateFormula = (cell: string): string =>
  `VALUE(RIGHT(${cell},2))&" "&CHOOSE(VALUE(MID(${cell},6,2)),${months.map((month) => `"${month}"`).join(',')})&" "&LEFT(${cell},4)`

export interface TableColumn {
  readonly head: string
  readonly align?: 'left' | 'right' | 'center'
}

/** A small table; text to the left, numbers to the right. Returns the row after it. */
export function writeTable(
  sheet: Worksheet,
  start: number,
  columns: readonly TableColumn[],
  rows: readonly (readonly (Shown | string | number | undefined)[])[],
): number {
  columns.forEach(({ head, align = 'right' }, i) => {
    dress(sheet.getRow(start).getCell(i + 1), {
      font: { ...fonts.bold, size: 9 },
      fill: fills.heading,
      alignment: {
        horizontal: align,
        vertical: 'middle',
        wrapText: true,
        indent: align === 'left' && i > 0 ? 1 : 0,
      },
    }).value = head
  })
  sheet.getRow(start).height = 13 * Math.max(1, ...columns.map(({ head }) => head.split('\n').length))
  rows.forEach((cells, k) => {
    const row = start + 1 + k
    columns.forEach(({ align = 'right' }, i) => {
      const shown = cells[i]
      const { value, numFmt } = asShown(shown)
      dress(sheet.getRow(row).getCell(i + 1), {
        ...(numFmt && { numFmt }),
        alignment: {
          horizontal: align,
          vertical: 'top',
          wrapText: align === 'left',
          indent: align === 'left' && i > 0 ? 1 : 0,
        },
      }).value = value
    })
    sheet.getRow(row).height = 13.5 * Math.max(1, ...columns.map((_, i) => linesOf(sheet, i + 1, cells[i])))
    underline(sheet, row, columns.length)
  })
  return start + 1 + rows.length
}

/** Lines that a text takes in its column; the width of a column counts in characters. */
function linesOf(sheet: Worksheet, column: number, shown: Shown | string | number | undefined): number {
  const { value } = asShown(shown)
  const text = value !== null && typeof value === 'object' && 'result' in value ? value.result : value
  return typeof text === 'string' ? wrappedLines(text, (sheet.getColumn(column).width ?? 10) * 1.2 - 2) : 1
}

function asShown(shown: Shown | string | number | undefined): Shown {
  if (shown === undefined) return { value: null }
  return typeof shown === 'object' ? shown : { value: shown }
}

/** Size of the body font, points; `perRow` counts characters of it. */
const BODY_SIZE = 10

/** A line of text across the sheet, high enough for what it holds. Returns the row after it. */
export function writeLine(
  sheet: Worksheet,
  row: number,
  text: string,
  { columns, perRow, font = fonts.body }: { columns: number; perRow: number; font?: typeof fonts.body },
): number {
  sheet.mergeCells(row, 1, row, columns)
  dress(sheet.getRow(row).getCell(1), { font, alignment: wrap }).value = text
  const size = font.size ?? BODY_SIZE
  sheet.getRow(row).height = (size + 3.5) * wrappedLines(text, (perRow * BODY_SIZE) / size)
  return row + 1
}
