import { SaxesParser } from 'saxes'
import { localName } from './sheet-cells.js'

interface Place {
  start: number
  /** End of its start tag. */
  opened: number
  end: number
}

/** A cell element of content.xml; it stands for `repeat` cells side by side, the first in `column`, from 1. */
export interface SpreadsheetCell extends Place {
  column: number
  repeat: number
  /** Lies under a merged block. */
  covered: boolean
  attributes: Readonly<Record<string, string>>
  /** Its paragraphs, without those of a comment. */
  paragraphs: { start: number; end: number }[]
}

/** A row element, which stands for `repeat` rows, the first of them `row`, from 1. */
export interface SpreadsheetRow extends Place {
  row: number
  repeat: number
  cells: SpreadsheetCell[]
  /** Stands in the table itself, not in a group of rows. */
  plain: boolean
}

export interface SpreadsheetTable {
  name: string
  rows: SpreadsheetRow[]
}

/** The tables of an OpenDocument content.xml with the places of their rows and cells in its text. Throws an Error where the XML is broken. */
export function spreadsheetTables(xml: string): SpreadsheetTable[] {
  const parser = new SaxesParser()
  const tables: SpreadsheetTable[] = []
  const open: string[] = []
  let table: { depth: number; rows: SpreadsheetRow[] } | undefined
  let cell: { depth: number; found: SpreadsheetCell } | undefined
  let start = 0
  let paragraph = 0
  parser.on('error', (error) => {
    throw error
  })
  parser.on('opentagstart', () => {
    start = xml.lastIndexOf('<', parser.position - 1)
  })
  parser.on('opentag', ({ name, attributes }) => {
    const local = localName(name)
    const parent = open.at(-1)
    open.push(local)
    const place = { start, opened: parser.position, end: parser.position }
    if (cell) {
      if (local === 'p' && open.length === cell.depth + 1) paragraph = start
    } else if (!table) {
      // Copies of other files and of earlier versions hold tables too.
      if (local !== 'table' || parent !== 'spreadsheet') return
      const rows: SpreadsheetRow[] = []
      tables.push({ name: attributes['table:name'] ?? '', rows })
      table = { depth: open.length, rows }
    } else if (local === 'table-row' && !open.slice(table.depth, -1).includes('table')) {
      const last = table.rows.at(-1)
      const row = last ? last.row + last.repeat : 1
      const repeat = repeats(attributes['table:number-rows-repeated'])
      table.rows.push({ ...place, row, repeat, cells: [], plain: parent === 'table' })
    } else if ((local === 'table-cell' || local === 'covered-table-cell') && parent === 'table-row') {
      const row = table.rows.at(-1)
      const before = row?.cells.at(-1)
      const found: SpreadsheetCell = {
        ...place,
        column: before ? before.column + before.repeat : 1,
        repeat: repeats(attributes['table:number-columns-repeated']),
        covered: local === 'covered-table-cell',
        attributes,
        paragraphs: [],
      }
      row?.cells.push(found)
      cell = { depth: open.length, found }
    }
  })
  parser.on('closetag', ({ name }) => {
    const local = localName(name)
    const end = parser.position
    if (cell && local === 'p' && open.length === cell.depth + 1)
      cell.found.paragraphs.push({ start: paragraph, end })
    if (cell && open.length === cell.depth) {
      cell.found.end = end
      cell = undefined
    } else if (!cell && table && local === 'table-row') {
      const row = table.rows.at(-1)
      if (row) row.end = end
    } else if (table && open.length === table.depth) table = undefined
    open.pop()
  })
  parser.write(xml).close()
  return tables
}

const repeats = (said: string | undefined): number => {
  const count = Number(said ?? 1)
  return Number.isInteger(count) && count >= 1 ? count : 1
}
