import { spreadsheetFormula } from '@draughtbook/shared-calc/log'
import { strFromU8, strToU8, unzipSync, type Zippable, zipSync } from 'fflate'
import { cellAddress, joinReference } from '../host/address.js'
import { splice } from './change-cell.js'
import { changeSpreadsheetCell, spreadsheetRefusal, withoutResult } from './change-spreadsheet-cell.js'
import { dependants } from './dependants.js'
import type { CellPatch, Patched } from './patch-workbook.js'
import type { CellElement, SheetElements } from './sheet-cells.js'
import { type SpreadsheetTable, spreadsheetTables } from './spreadsheet-cells.js'

const CONTENT = 'content.xml'
const SIGNATURES = 'META-INF/documentsignatures.xml'
/** Names before the colons that the change is written with. */
const NAMES = ['office', 'table', 'text'].map(
  (name) => `xmlns:${name}="urn:oasis:names:tc:opendocument:xmlns:${name}:1.0"`,
)
/** A formula written once for so many cells does not come from a log. */
const MOST_COPIES = 10_000

/**
 * Changes cells of an .ods file in its content.xml; styles, comments, drawings and every other part stay as they are. Results stored for
 * formulas that read the changed cells are taken out, so that programs work them out again. Throws an Error where the file is no
 * spreadsheet of this kind, or is signed.
 */
export function patchSpreadsheet(bytes: Uint8Array, patches: readonly CellPatch[]): Patched {
  const parts = unzipSync(bytes)
  const content = parts[CONTENT]
  if (!content) throw new Error(`the spreadsheet has no part ${CONTENT}`)
  if (parts[SIGNATURES]) throw new Error('the file is signed, and a change would break its signature')
  let xml = strFromU8(content)
  const head = xml.slice(0, xml.indexOf('>', xml.indexOf('document-content')))
  if (!NAMES.every((name) => head.includes(name)))
    throw new Error('the spreadsheet has a form that this page cannot change')
  const before = spreadsheetTables(xml)
  const left: Patched['left'] = []
  const taken = patches.filter(({ sheet, row, column }) => {
    const own = tableOf(before, sheet)
    const why = own ? spreadsheetRefusal(own, xml, row, column) : 'the spreadsheet has no such sheet'
    if (why !== undefined) left.push({ cell: joinReference(sheet, cellAddress(row, column)), why })
    return why === undefined
  })
  // Results first: places found in the XML hold only until it is changed.
  const stale = dependants(new Map(before.map((table) => [table.name, formulasOf(table)])), taken)
  const places = new Set(stale.map(({ cell }) => cell.start))
  const cells = before.flatMap(({ rows }) => rows.flatMap((row) => row.cells))
  for (const cell of cells.toReversed())
    if (places.has(cell.start)) xml = splice(xml, cell.start, cell.end, withoutResult(xml, cell))
  for (const { sheet, row, column, content: wanted } of taken) {
    const table = tableOf(spreadsheetTables(xml), sheet)
    if (table) xml = changeSpreadsheetCell(xml, table, row, column, wanted)
  }
  const files: Zippable = {}
  // The kind of file is told by the first part, which is not compressed (OpenDocument 1.3 part 2, 3.3).
  for (const [path, part] of Object.entries(parts))
    files[path] = [path === CONTENT ? strToU8(xml) : part, { level: path === 'mimetype' ? 0 : 6 }]
  return { bytes: zipSync(files), left }
}

const tableOf = (tables: readonly SpreadsheetTable[], sheet: string): SpreadsheetTable | undefined =>
  tables.find(({ name }) => name === sheet)

/** The formulas of a table as a workbook would hold them, so that what they read is found alike. */
function formulasOf({ rows }: SpreadsheetTable): SheetElements {
  let copies = 0
  const found = rows.flatMap((own) => {
    const cells = own.cells.flatMap(({ attributes, column, repeat, start, opened }) => {
      const written = attributes['table:formula']
      if (written === undefined) return []
      copies += repeat * own.repeat
      if (copies > MOST_COPIES) throw new Error('the spreadsheet repeats its formulas too often')
      const formula = { text: spreadsheetFormula(written), attributes: {} }
      return Array.from({ length: repeat }, (_, more) => ({
        column: column + more,
        start,
        end: opened,
        attributes,
        formula,
      }))
    })
    return Array.from({ length: cells.length === 0 ? 0 : own.repeat }, (_, more) => {
      const row = own.row + more
      return {
        row,
        start: own.start,
        end: own.end,
        cells: cells.map((cell): CellElement => ({ ...cell, row })),
      }
    })
  })
  return { rows: found, start: 0, end: 0, prefix: '' }
}
