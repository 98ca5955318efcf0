import type { Worksheet } from 'exceljs'
import { dress, fills, fonts, formatFor, headingRow, underline } from './styles.js'

export const CHECK_COLUMNS = 5
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
  dress(sheet.getRow(row).getCell(2), { numFmt }).value = recorded
  dress(sheet.getRow(row).getCell(3), { numFmt }).value = { formula: address, result: recorded }
  dress(sheet.getRow(row).getCell(4), { numFmt: '0.0E+00;-0.0E+00;0' }).value = {
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

/** Characters that fit the columns of recorded and present contents. */
const CUT = 22

/** A text or truth value as it was recorded against the cell that holds it now. */
export function textRow(sheet: Worksheet, row: number, recorded: string | boolean, address: string): void {
  // The beginning of a text that is cut says more than its end.
  const alignment = { horizontal: String(recorded).length > CUT ? ('left' as const) : ('right' as const) }
  dress(sheet.getRow(row).getCell(2), { alignment }).value = recorded
  dress(sheet.getRow(row).getCell(3), { alignment }).value = {
    formula: address,
    result: recorded,
  }
  // LibreOffice counts truth values among the numbers.
  const kind = typeof recorded === 'boolean' ? `NOT(ISLOGICAL(${address}))` : `ISNUMBER(${address})`
  state(sheet, row, `IF(${kind},FALSE,EXACT(B${row},C${row}))`)
}

/** Whether a row agrees, by a formula that gives a truth value. */
export function state(sheet: Worksheet, row: number, agrees: string): void {
  dress(sheet.getRow(row).getCell(5), { alignment: { horizontal: 'right' } }).value = {
    formula: `IF(IFERROR(${agrees},FALSE),"agrees","differs")`,
    result: 'agrees',
  }
  underline(sheet, row, CHECK_COLUMNS)
}
