import type { Cell, Worksheet } from 'exceljs'

const HEADS = 6

/** The cell of a test below a heading of sheet Register. @param number - of the test, where rows are in their order */
export function cellUnder(sheet: Worksheet, head: string, number: number): Cell {
  const heads = sheet.getRow(HEADS).values as (string | undefined)[]
  const column = heads.findIndex((one) => one?.replace(/-\n/, '').replace(/\s+/g, ' ') === head)
  if (column < 1) throw new RangeError(`no column ${head}`)
  return sheet.getCell(HEADS + number, column)
}
