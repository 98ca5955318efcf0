import { type Area, cellAddress, parseArea } from '../host/address.js'
import type { CellElement, SheetElements } from './sheet-cells.js'

/** What a cell is to hold; undefined empties it. */
export type CellContent = number | string | undefined

/** Why a cell cannot be given another value here; undefined where it can. */
export function refusal({ rows }: SheetElements, row: number, column: number): string | undefined {
  const here = { top: row, left: column, bottom: row, right: column }
  for (const { cells } of rows)
    for (const { formula } of cells) {
      const area = parseArea(formula?.attributes.ref ?? '')
      if (area && covers(area, here) && formula?.attributes.t !== undefined)
        return 'its formula is shared with other cells; change it in the spreadsheet'
    }
  return undefined
}

/** The sheet's XML with one cell changed; the cell keeps its style, and everything else stands as it stood. */
export function changeCell(
  xml: string,
  sheet: SheetElements,
  row: number,
  column: number,
  content: CellContent,
): string {
  const { prefix, rows } = sheet
  const reference = cellAddress(row, column)
  const own = rows.find((one) => one.row === row)
  const cell = own?.cells.find((one) => one.column === column)
  const made = cellXml(prefix, reference, content, cell)
  if (cell) return splice(xml, cell.start, cell.end, made)
  if (content === undefined) return xml
  if (own?.closing !== undefined) {
    const next = own.cells.find((one) => one.column > column)
    return splice(xml, next?.start ?? own.closing, next?.start ?? own.closing, made)
  }
  if (own) {
    const opening = xml.slice(own.start, own.end).replace('/>', '>')
    return splice(xml, own.start, own.end, `${opening}${made}</${prefix}row>`)
  }
  const newRow = `<${prefix}row r="${row}">${made}</${prefix}row>`
  const next = rows.find((one) => one.row > row)
  if (next) return splice(xml, next.start, next.start, newRow)
  return sheet.closing === undefined
    ? splice(xml, sheet.start, sheet.end, `<${prefix}sheetData>${newRow}</${prefix}sheetData>`)
    : splice(xml, sheet.closing, sheet.closing, newRow)
}

function cellXml(
  prefix: string,
  reference: string,
  content: CellContent,
  before: CellElement | undefined,
): string {
  const style = before?.attributes.s === undefined ? '' : ` s="${escaped(before.attributes.s)}"`
  const start = `<${prefix}c r="${reference}"${style}`
  if (content === undefined) return `${start}/>`
  if (typeof content === 'number') return `${start}><${prefix}v>${content}</${prefix}v></${prefix}c>`
  return `${start} t="inlineStr"><${prefix}is><${prefix}t xml:space="preserve">${escaped(content)}</${prefix}t></${prefix}is></${prefix}c>`
}

export const splice = (text: string, start: number, end: number, made: string): string =>
  text.slice(0, start) + made + text.slice(end)

/** Text for XML: what XML cannot hold at all is left out. */
export function escaped(text: string): string {
  return (
    text
      // biome-ignore lint/suspicious/noControlCharactersInRegex: these are the characters that XML does not allow
      .replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/g, '')
      .replaceAll('&', '&amp;')
      .replaceAll('<', '&lt;')
      .replaceAll('>', '&gt;')
      .replaceAll('"', '&quot;')
  )
}

export const covers = (area: Area, { top, left, bottom, right }: Area): boolean =>
  area.top <= bottom && area.bottom >= top && area.left <= right && area.right >= left
