import type { Alignment, Worksheet } from 'exceljs'
import { dress, fills, fonts, formatFor, headingRow, heightFor, underline, wrap } from './styles.js'

export const CHECK_COLUMNS = 5
/** Widths of the columns: what, recorded, now, difference, state. */
export const CHECK_WIDTHS = [46, 28, 28, 14, 11] as const
/** Largest relative difference that still counts as agreement; of a small rest, relative to the whole it is a rest of. */
const TOLERANCE = '1E-9'

/** The heads of a block of rows: recorded, now, difference, state. */
export function heads(sheet: Worksheet, row: number, title: string): void {
  headingRow(sheet, row, title, CHECK_COLUMNS)
  for (const [column, text] of [
    [2, 'recorded'],
    [3, 'now'],
    [4, 'difference'],
    [5, 'state'],
  ] as const)
    dress(sheet.getRow(row).getCell(column), {
      font: fonts.bold,
      fill: fills.heading,
      alignment: { horizontal: 'right' },
    }).value = text
}

/** A number as it was recorded against the cell that holds it now. @param restOf - what it is a small rest of, such as a limit */
export function numberRow(
  sheet: Worksheet,
  row: number,
  recorded: number,
  address: string,
  restOf = 0,
): void {
  const sizes = [`ABS(B${row})`, `ABS(C${row})`, ...(restOf > 0 ? [literal(restOf)] : [])]
  const numFmt = formatFor(recorded)
  dress(sheet.getRow(row).getCell(2), { numFmt, alignment: { vertical: 'top' } }).value = recorded
  dress(sheet.getRow(row).getCell(3), { numFmt, alignment: { vertical: 'top' } }).value = {
    formula: address,
    result: recorded,
  }
  dress(sheet.getRow(row).getCell(4), {
    numFmt: '0.0E+00;-0.0E+00;0',
    alignment: { vertical: 'top' },
  }).value = {
    // Where both agree, what rounding leaves between them is not shown as a difference.
    formula: `IF(E${row}="agrees",0,IFERROR(C${row}-B${row},""))`,
    result: 0,
  }
  state(
    sheet,
    row,
    `IF(ISNUMBER(${address}),ABS(C${row}-B${row})<=${TOLERANCE}*MAX(${sizes.join(',')}),FALSE)`,
  )
}

/** Few digits are enough for a tolerance, and programs that save them again keep them. */
const literal = (value: number): string => String(Number(value.toPrecision(3)))

/** Characters of the body font that fit a line of the columns of recorded and present contents. */
const LINE = 32
/** Characters of the small font that fit a line of the column that says what is compared. */
const NAME_LINE = 62

/** A text or truth value as it was recorded against the cell that holds it now. */
export function textRow(sheet: Worksheet, row: number, recorded: string | boolean, address: string): void {
  const alignment = textAlignment(sheet, row, String(recorded))
  dress(sheet.getRow(row).getCell(2), { alignment }).value = recorded
  dress(sheet.getRow(row).getCell(3), { alignment }).value = {
    formula: address,
    result: recorded,
  }
  // LibreOffice counts truth values among the numbers.
  const kind = typeof recorded === 'boolean' ? `NOT(ISLOGICAL(${address}))` : `ISNUMBER(${address})`
  state(sheet, row, `IF(${kind},FALSE,EXACT(B${row},C${row}))`)
}

/** A long text takes as many lines as it needs; short ones are set as numbers are. */
export function textAlignment(
  sheet: Worksheet,
  row: number,
  text: string,
  perLine = LINE,
): Partial<Alignment> {
  if (text.length <= LINE) return { horizontal: 'right', vertical: 'top' }
  sheet.getRow(row).height = heightFor(text, perLine)
  return { ...wrap, horizontal: 'left' }
}

/** What a row compares. */
export function nameRow(sheet: Worksheet, row: number, name: string, font = fonts.muted): void {
  dress(sheet.getRow(row).getCell(1), { font, alignment: wrap }).value = name
  const height = heightFor(name, NAME_LINE)
  if (name.length > NAME_LINE) sheet.getRow(row).height = Math.max(height, sheet.getRow(row).height ?? 0)
}

/** Whether a row agrees, by a formula that gives a truth value. */
export function state(sheet: Worksheet, row: number, agrees: string): void {
  dress(sheet.getRow(row).getCell(5), { alignment: { horizontal: 'right', vertical: 'top' } }).value = {
    formula: `IF(IFERROR(${agrees},FALSE),"agrees","differs")`,
    result: 'agrees',
  }
  underline(sheet, row, CHECK_COLUMNS)
}
