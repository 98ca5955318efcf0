import ExcelJS from 'exceljs'

export type Value = ExcelJS.CellValue

/** Rows of a sheet as a person would type them; null leaves a cell empty. */
export type Rows = readonly (readonly Value[])[]

/** Builds a workbook from rows, sheet by sheet; `finish` does what rows cannot say: formats, merges, strikes. */
export async function book(
  sheets: Readonly<Record<string, Rows>>,
  finish: (workbook: ExcelJS.Workbook) => void = () => undefined,
): Promise<Uint8Array> {
  const workbook = new ExcelJS.Workbook()
  for (const [name, rows] of Object.entries(sheets)) {
    const sheet = workbook.addWorksheet(name)
    for (const [row, values] of rows.entries())
      for (const [column, value] of values.entries())
        if (value !== null) {
          const cell = sheet.getCell(row + 1, column + 1)
          cell.value = value
          if (value instanceof Date) cell.numFmt = 'yyyy-mm-dd'
        }
  }
  finish(workbook)
  return new Uint8Array(await workbook.xlsx.writeBuffer())
}

/** A day as exceljs takes it: midnight, universal time. */
export const day = (text: string) => new Date(`${text}T00:00:00Z`)

/** A sheet of a workbook under construction. */
export function sheetOf(workbook: ExcelJS.Workbook, name: string): ExcelJS.Worksheet {
  const sheet = workbook.getWorksheet(name)
  if (!sheet) throw new Error(`no sheet ${name}`)
  return sheet
}
