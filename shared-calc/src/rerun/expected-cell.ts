import ExcelJS, { type Workbook, type Cell as WrittenCell } from 'exceljs'
import { serial } from '../reports/workbook/zip/rows-text.js'
import type { IssuedContents } from './look/compare-cell-looks.js'

/** What the writer puts into a cell. */
export interface ExpectedCell {
  readonly value: number | string | boolean
  readonly formula?: string
  /** An error such as #N/A, which a formula gives on purpose. */
  readonly kind?: 'error'
  readonly format?: string
}

/** The cell as the writer would store it; undefined for an empty one or one covered by a merged block. */
export function expectedCell(cell: WrittenCell): ExpectedCell | undefined {
  if (cell.isMerged && cell.master !== cell) return undefined
  const value = contentOf(cell)
  if (value === undefined) return undefined
  return {
    value,
    ...(isError(cell.result) && { kind: 'error' as const }),
    ...(cell.type === ExcelJS.ValueType.Formula && { formula: cell.formula }),
    ...(cell.numFmt && { format: cell.numFmt }),
  }
}

/** Numbers and texts that the writer puts into the cells of a workbook, rows and columns counted from 0. */
export const issuedContents =
  (workbook: Workbook): IssuedContents =>
  (sheet, row, column) => {
    const cell = workbook.getWorksheet(sheet)?.findCell(row + 1, column + 1)
    const value = cell && expectedCell(cell)?.value
    return typeof value === 'boolean' ? undefined : value
  }

const isError = (value: unknown): value is { readonly error: unknown } =>
  typeof value === 'object' && value !== null && 'error' in value

function contentOf(cell: WrittenCell): ExpectedCell['value'] | undefined {
  const { type } = cell
  if (type === ExcelJS.ValueType.Null) return undefined
  const value: unknown = type === ExcelJS.ValueType.Formula ? cell.result : cell.value
  if (typeof value === 'number' || typeof value === 'boolean' || typeof value === 'string') return value
  if (value instanceof Date) return serial(value)
  if (isError(value)) return String(value.error)
  // A formula whose result is an empty text is stored without one.
  if (value === undefined || value === null) return ''
  return cell.text
}
