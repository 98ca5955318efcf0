import { SaxesParser } from 'saxes'
import { columnNumber } from '../host/address.js'

/** A cell element of a sheet's XML with its place in the text. */
export interface CellElement {
  row: number
  column: number
  start: number
  end: number
  attributes: Readonly<Record<string, string>>
  /** The formula element, where there is one. */
  formula?: { text: string; attributes: Readonly<Record<string, string>> }
  /** Place of the stored result. */
  value?: { start: number; end: number }
}

export interface RowElement {
  row: number
  start: number
  end: number
  /** Where its cells end; undefined for an element without an end tag. */
  closing?: number
  cells: CellElement[]
}

/** A sheet's rows and cells as they are in its XML; `closing` is where the rows end. */
export interface SheetElements {
  rows: RowElement[]
  closing?: number
  start: number
  end: number
  /** Prefix of the element names, with its colon. */
  prefix: string
}

/** Finds rows and cells in a sheet's XML. Throws an Error where there is none, or where the XML is broken. */
export function sheetElements(xml: string): SheetElements {
  const parser = new SaxesParser()
  const rows: RowElement[] = []
  let sheet: SheetElements | undefined
  let start = 0
  let cell: CellElement | undefined
  let text = ''
  let valueStart = 0
  parser.on('error', (error) => {
    throw error
  })
  parser.on('opentagstart', () => {
    start = xml.lastIndexOf('<', parser.position - 1)
  })
  parser.on('text', (more) => {
    text += more
  })
  parser.on('opentag', ({ name, attributes, isSelfClosing }) => {
    const local = localName(name)
    text = ''
    const place = { start, end: parser.position }
    if (local === 'sheetData') sheet = { rows, ...place, prefix: name.slice(0, -'sheetData'.length) }
    else if (!sheet || sheet.closing !== undefined) return
    else if (local === 'row') {
      const row = Number(attributes.r ?? (rows.at(-1)?.row ?? 0) + 1)
      rows.push({ row, ...place, cells: [] })
    } else if (local === 'c') {
      const row = rows.at(-1)
      if (!row) return
      cell = { row: row.row, column: columnOf(attributes.r, row), ...place, attributes }
      row.cells.push(cell)
    } else if (local === 'f' && cell) cell.formula = { text: '', attributes }
    else if (local === 'v' && !isSelfClosing) valueStart = start
  })
  parser.on('closetag', ({ name, isSelfClosing }) => {
    const local = localName(name)
    const end = parser.position
    const tag = xml.lastIndexOf('<', end - 1)
    const row = rows.at(-1)
    if (local === 'f' && cell?.formula) cell.formula.text = text
    else if (local === 'v' && cell && !isSelfClosing) cell.value = { start: valueStart, end }
    else if (local === 'c' && cell) {
      cell.end = end
      cell = undefined
    } else if (local === 'row' && row && sheet?.closing === undefined) {
      row.end = end
      if (!isSelfClosing) row.closing = tag
    } else if (local === 'sheetData' && sheet) {
      sheet.end = end
      if (!isSelfClosing) sheet.closing = tag
    }
  })
  parser.write(xml).close()
  if (!sheet) throw new Error('this sheet has no cells to change')
  return sheet
}

export const localName = (name: string): string => name.slice(name.indexOf(':') + 1)

function columnOf(reference: string | undefined, { cells }: RowElement): number {
  const letters = /^[A-Za-z]+/.exec(reference ?? '')?.[0]
  return letters === undefined ? (cells.at(-1)?.column ?? 0) + 1 : columnNumber(letters)
}
