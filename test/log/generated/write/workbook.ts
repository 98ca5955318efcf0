import ExcelJS from 'exceljs'
import type { Sheet } from './sheet.js'

/** The sheets as an .xlsx file. */
export async function writeWorkbook(sheets: readonly Sheet[]): Promise<Uint8Array> {
  const workbook = new ExcelJS.Workbook()
  const written = new Date('2026-11-02T09:00:00Z')
  workbook.created = written
  workbook.modified = written
  for (const sheet of sheets) fill(workbook.addWorksheet(sheet.name), sheet)
  return new Uint8Array(await workbook.xlsx.writeBuffer())
}

function fill(worksheet: ExcelJS.Worksheet, sheet: Sheet): void {
  if (sheet.hidden) worksheet.state = 'hidden'
  for (const [key, { value, format, struck, grey, formula }] of sheet.cells) {
    const [row = 0, column = 0] = key.split(',').map(Number)
    const cell = worksheet.getCell(row, column)
    cell.value = formula === undefined ? value : { formula, result: value as number }
    if (format !== undefined) cell.numFmt = format
    else if (value instanceof Date) cell.numFmt = 'dd/mm/yyyy'
    if (struck) cell.font = { strike: true }
    if (grey) cell.fill = { type: 'pattern', pattern: 'solid', fgColor: { argb: 'FFBFBFBF' } }
  }
  for (const [top, left, bottom, right] of sheet.merges) worksheet.mergeCells(top, left, bottom, right)
  for (const column of sheet.hiddenColumns) worksheet.getColumn(column).hidden = true
  for (const row of sheet.hiddenRows) worksheet.getRow(row).hidden = true
}
