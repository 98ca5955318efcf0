import type { Alignment, Borders, Cell, Fill, Font, Worksheet } from 'exceljs'
import { wrappedLines } from './wrapped-lines.js'

const INK = 'FF1F2933'
const MUTED = 'FF52606D'
const ACCENT = 'FF1F4E5F'

const solid = (argb: string): Fill => ({ type: 'pattern', pattern: 'solid', fgColor: { argb } })
const hair: Partial<Borders> = { bottom: { style: 'hair', color: { argb: 'FF9AA5B1' } } }

export const FONT = 'Calibri'

export const fonts: Readonly<
  Record<'body' | 'muted' | 'bold' | 'title' | 'heading' | 'verdict' | 'small', Partial<Font>>
> = {
  body: { name: FONT, size: 10, color: { argb: INK } },
  muted: { name: FONT, size: 9, color: { argb: MUTED } },
  small: { name: FONT, size: 8, color: { argb: MUTED } },
  bold: { name: FONT, size: 10, bold: true, color: { argb: INK } },
  title: { name: FONT, size: 18, bold: true, color: { argb: ACCENT } },
  heading: { name: FONT, size: 11, bold: true, color: { argb: ACCENT } },
  verdict: { name: FONT, size: 14, bold: true, color: { argb: INK } },
}

export const fills = {
  heading: solid('FFE4EDF0'),
  given: solid('FFFFFBEA'),
  good: solid('FFDDF3E4'),
  bad: solid('FFFBDCDC'),
  plain: solid('FFF1F3F5'),
} as const

export const wrap: Partial<Alignment> = { wrapText: true, vertical: 'top' }

/** Gives a cell its look; later keys win. */
export function dress(
  cell: Cell,
  look: { font?: Partial<Font>; fill?: Fill; numFmt?: string; alignment?: Partial<Alignment> },
): Cell {
  cell.font = look.font ?? fonts.body
  if (look.fill) cell.fill = look.fill
  if (look.numFmt) cell.numFmt = look.numFmt
  if (look.alignment) cell.alignment = look.alignment
  return cell
}

/** A band with a heading across the sheet. */
export function headingRow(sheet: Worksheet, row: number, text: string, columns: number): void {
  const cells = sheet.getRow(row)
  for (let column = 1; column <= columns; column += 1)
    dress(cells.getCell(column), { font: fonts.heading, fill: fills.heading })
  cells.getCell(1).value = text
}

/** A hairline under the cells of a row. Through the row: `sheet.getCell(row, column)` spells each address and reads it again. */
export function underline(sheet: Worksheet, row: number, columns: number): void {
  const cells = sheet.getRow(row)
  for (let column = 1; column <= columns; column += 1) cells.getCell(column).border = hair
}

/** A number format that shows about five significant digits of a value of this size. */
export function formatFor(value: number): string {
  const size = Math.abs(value)
  if (Number.isInteger(value) && size < 1e6) return '0'
  if (size >= 1000) return '0.0'
  if (size >= 100) return '0.00'
  if (size >= 10) return '0.000'
  if (size >= 0.01) return '0.0000'
  return '0.000E+00'
}

/** No row can be higher, in points. */
const HIGHEST_ROW = 409.5

/** Points of a row of the body font that shows a text in a column of this width, line breaks included. */
export const heightFor = (text: string, width: number): number =>
  Math.min(HIGHEST_ROW, 13.5 * wrappedLines(text, width))
