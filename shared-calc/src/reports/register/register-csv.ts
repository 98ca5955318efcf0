import ExcelJS from 'exceljs'
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
