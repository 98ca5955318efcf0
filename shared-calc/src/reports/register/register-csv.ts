import ExcelJS from 'exceljs'
import type { Grid } from '../../log/grid/grid.js'
import type { Register } from './register.js'
import { type CellContent, columns, headInWords } from './workbook/columns.js'

/**
 * The register's rows as CSV (RFC 4180, UTF-8 with a byte order mark, so that spreadsheet programs read it as such):
 * the columns of sheet Register, dates as 2026-10-31, numbers with all their digits and a decimal point.
 */
export async function registerCsv({ rows, asOf }: Register): Promise<string> {
  const workbook = new ExcelJS.Workbook()
  const sheet = workbook.addWorksheet('Register')
  sheet.addRow(columns.map(({ head }) => headInWords(head)))
  for (const row of rows)
    sheet.addRow(
      columns.map(({ content }) => plain(content(row, () => '', { asOf, seenFrom: (file) => file }))),
    )
  const text = await workbook.csv.writeBuffer({ formatterOptions: { rowDelimiter: '\r\n' } })
  return `\uFEFF${text.toString()}\r\n`
}

/** Texts that a spreadsheet program would take as a formula get an apostrophe before them. */
function plain(content: CellContent): string | number | null {
  if (content === null || typeof content === 'number') return content
  if (content instanceof Date) return content.toISOString().slice(0, 10)
  if (typeof content !== 'string') return plain('formula' in content ? content.result : content.text)
  return /^[=+\-@\t\r]/.test(content) ? `'${content}` : content
}

/** So many headings of a register are in no other list. */
const ENOUGH = 10

/** Whether separated text is a register, by the headings in its first row. */
export function isRegisterCsv(grid: Grid): boolean {
  if (grid.kind !== 'text') return false
  const sheet = grid.sheet(grid.sheetNames[0] ?? '')
  const heads = new Set(columns.map(({ head }) => headInWords(head)))
  const first = Array.from({ length: sheet?.columns ?? 0 }, (_, i) => sheet?.at(0, i)?.value)
  const texts = first.filter((value) => typeof value === 'string')
  return texts.filter((text) => heads.has(text)).length >= ENOUGH
}
