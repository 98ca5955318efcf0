import { readFileSync } from 'node:fs'
import { parseRecord } from '@draughtbook/shared-calc'
import { writeSummaryWorkbook } from '@draughtbook/shared-calc/workbook'
import ExcelJS from 'exceljs'
import { compare } from './report.js'

interface PlainCell {
  readonly row: number
  readonly column: number
  readonly value: ExcelJS.CellValue
  readonly style: Partial<ExcelJS.Style>
}

/** Every cell of the finished workbook as a plain value with its style. */
async function plainCells(bytes: Uint8Array): Promise<Map<string, PlainCell[]>> {
  const workbook = new ExcelJS.Workbook()
  await workbook.xlsx.load(bytes.slice().buffer)
  const sheets = new Map<string, PlainCell[]>()
  for (const sheet of workbook.worksheets) {
    const cells: PlainCell[] = []
    sheet.eachRow((row) => {
      row.eachCell((cell, column) => {
        const value =
          cell.type === ExcelJS.ValueType.Formula ? (cell.result as ExcelJS.CellValue) : cell.value
        cells.push({ row: cell.fullAddress.row, column, value, style: cell.style })
      })
    })
    sheets.set(sheet.name, cells)
  }
  return sheets
}

async function writePlain(
  sheets: ReadonlyMap<string, readonly PlainCell[]>,
  styled: boolean,
): Promise<unknown> {
  const workbook = new ExcelJS.Workbook()
  for (const [name, cells] of sheets) {
    const sheet = workbook.addWorksheet(name)
    for (const { row, column, value, style } of cells) {
      const cell = sheet.getCell(row, column)
      cell.value = value
      if (styled) cell.style = style
    }
  }
  return workbook.xlsx.writeBuffer()
}

/** One summary workbook, evaluation and chart included, against exceljs writing the same cells as plain values. */
export async function run(): Promise<void> {
  const record = parseRecord(JSON.parse(readFileSync('test/demo/demo-record.json', 'utf8')))
  const sheets = await plainCells(await writeSummaryWorkbook(record))
  const count = [...sheets.values()].reduce((sum, cells) => sum + cells.length, 0)
  await compare(
    `Writing one summary workbook (${count} cells)`,
    { name: 'exceljs: the same cells as plain values, same look', run: () => writePlain(sheets, true) },
    [
      {
        name: 'summary workbook with live formulas, evaluation and chart',
        run: () => writeSummaryWorkbook(record),
      },
      {
        name: 'exceljs: the same cells as plain values, no look at all',
        run: () => writePlain(sheets, false),
      },
    ],
    1.5,
  )
}
