import ExcelJS from 'exceljs'

/** For workbooks that are not of one day: a fixed date, so that the same input gives the same bytes. */
const UNDATED = new Date('2000-01-01T12:00:00Z')

/**
 * An empty workbook with its document properties.
 * @param title - title among the document properties
 * @param dated - day that the workbook is of
 */
export function newWorkbook(title: string, dated = UNDATED): ExcelJS.Workbook {
  const workbook = new ExcelJS.Workbook()
  return Object.assign(workbook, {
    creator: 'Draughtbook',
    lastModifiedBy: 'Draughtbook',
    created: dated,
    modified: dated,
    title,
  })
}

/** Orders the tabs for the reader. Sheets are written in another order: a cell must have its place before others refer to it. */
export function orderSheets(workbook: ExcelJS.Workbook, names: readonly string[]): void {
  for (const sheet of workbook.worksheets) Object.assign(sheet, { orderNo: names.indexOf(sheet.name) })
}

/** Every cell of a workbook; by number, since exceljs' own way through a sheet takes several times as long. */
export function forEachCell(workbook: ExcelJS.Workbook, visit: (cell: ExcelJS.Cell) => void): void {
  for (const sheet of workbook.worksheets)
    for (let at = 1; at <= sheet.rowCount; at += 1) {
      const row = sheet.findRow(at)
      for (let column = 1; row && column <= row.cellCount; column += 1) {
        const cell = row.findCell(column)
        if (cell) visit(cell)
      }
    }
}

/** Which calculation version a workbook of several tests was made under, as a sentence on it. */
export const madeUnder = (version: string): string => `Calculation version ${version}.`

/** The version that such a text names, whatever else it says. */
export const versionIn = (text: string): string | undefined =>
  /\bCalculation version (\d{1,4}\.\d{1,4}\.\d{1,4})\./.exec(text)?.[1]
