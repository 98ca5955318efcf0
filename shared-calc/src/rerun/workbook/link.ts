import type { Cell } from 'exceljs'
import { fileLink } from '../../reports/workbook/file-link.js'
import { fonts } from '../../reports/workbook/styles.js'

/** Writes a text that opens a file, or a cell of it (`Working!C12`). */
export function linkTo(cell: Cell, text: string, file: string, place?: string): void {
  const path = fileLink(file)
  cell.value = { text, hyperlink: place === undefined ? path : `${path}#${place}` }
  cell.font = { ...fonts.body, underline: true, color: { argb: 'FF1F4E5F' } }
}
