import { readFile } from 'node:fs/promises'
import ExcelJS from 'exceljs'
import { recalculate } from './libreoffice'

export interface FormulaCell {
  sheet: string
  address: string
  formula: string
  /** What the file stores; an empty text where it stores nothing. */
  cached: CellResult
  /** What LibreOffice makes of the formula. */
  recalculated: CellResult
}

/** An error value is its text, such as #DIV/0!; a date its number of milliseconds. */
export type CellResult = number | string | boolean

/** Every formula cell of a workbook with its stored and its recalculated result. */
export async function readCells(
  workbook: Uint8Array | string,
  by: (workbook: Uint8Array) => Promise<Uint8Array> = recalculate,
): Promise<FormulaCell[]> {
  const bytes = typeof workbook === 'string' ? await readFile(workbook) : workbook
  const [stored, fresh] = await Promise.all([load(bytes), by(bytes).then(load)])
  const cells: FormulaCell[] = []
  for (const sheet of stored.worksheets) {
    const other = fresh.getWorksheet(sheet.name)
    if (!other) throw new Error(`the other program lost the sheet ${sheet.name}`)
    sheet.eachRow((row) => {
      row.eachCell((cell) => {
        if (cell.type !== ExcelJS.ValueType.Formula) return
        const { address, formula } = cell
        const recalculated = result(other.getCell(address))
        cells.push({ sheet: sheet.name, address, formula, cached: result(cell), recalculated })
      })
    })
  }
  return cells
}

/**
 * The formula cells whose stored result LibreOffice does not confirm. Numbers may differ by `relative` (LibreOffice
 * writes 15 digits) or by `absolute`, 0 unless given, for residuals that are zero but for rounding; everything else
 * must be equal. A workbook without any formula is refused: there would be nothing to compare.
 */
export async function compareCached(
  workbook: Uint8Array | string,
  { relative = 1e-9, absolute = 0, by = recalculate as (workbook: Uint8Array) => Promise<Uint8Array> } = {},
): Promise<FormulaCell[]> {
  const cells = await readCells(workbook, by)
  if (cells.length === 0) throw new Error('the workbook has no formula cells to compare')
  return cells.filter(({ cached, recalculated }) => !agree(cached, recalculated, relative, absolute))
}

function agree(a: CellResult, b: CellResult, relative: number, absolute: number): boolean {
  if (typeof a !== 'number' || typeof b !== 'number') return a === b
  return Math.abs(a - b) <= Math.max(relative * Math.max(Math.abs(a), Math.abs(b)), absolute)
}

async function load(bytes: Uint8Array): Promise<ExcelJS.Workbook> {
  const workbook = new ExcelJS.Workbook()
  await workbook.xlsx.load(new Uint8Array(bytes).buffer)
  return workbook
}

function result(cell: ExcelJS.Cell): CellResult {
  const value: unknown = cell.type === ExcelJS.ValueType.Formula ? cell.result : cell.value
  if (value === undefined || value === null) return ''
  if (value instanceof Date) return value.getTime()
  if (typeof value === 'object' && 'error' in value) return String(value.error)
  if (typeof value === 'number' || typeof value === 'boolean') return value
  return typeof value === 'object' ? cell.text : String(value)
}
