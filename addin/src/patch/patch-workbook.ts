import { strFromU8, strToU8, unzipSync, type Zippable, zipSync } from 'fflate'
import { cellAddress, joinReference } from '../host/address.js'
import { type CellContent, changeCell, refusal } from './change-cell.js'
import { dependants } from './dependants.js'
import { type CellElement, type SheetElements, sheetElements } from './sheet-cells.js'
import { recalculated, sheetParts, without } from './workbook-parts.js'

/** A cell to change; row and column count from 1. */
export interface CellPatch {
  sheet: string
  row: number
  column: number
  content: CellContent
}

/** The workbook with cells changed, and which could not be changed, with the reason. */
export interface Patched {
  bytes: Uint8Array
  left: { cell: string; why: string }[]
}

const WORKBOOK = 'xl/workbook.xml'
const RELATIONSHIPS = 'xl/_rels/workbook.xml.rels'
const CHAIN = 'xl/calcChain.xml'
const TYPES = '[Content_Types].xml'

/**
 * Changes cells of an .xlsx file in its own parts. Styles, formulas, charts and every other part stay byte for byte. Results stored for
 * formulas that read the changed cells are taken out and the workbook is told to recalculate, so that no program shows a stale one.
 * Throws an Error where the file is not a workbook of this kind.
 */
export function patchWorkbook(bytes: Uint8Array, patches: readonly CellPatch[]): Patched {
  const parts = unzipSync(bytes)
  const text = (path: string): string => {
    const part = parts[path]
    if (!part) throw new Error(`the workbook has no part ${path}`)
    return strFromU8(part)
  }
  const paths = sheetParts(text(WORKBOOK), text(RELATIONSHIPS))
  const before = new Map([...paths].flatMap(([sheet, path]) => elements(parts[path], sheet)))
  const left: Patched['left'] = []
  const taken = patches.filter(({ sheet, row, column }) => {
    const own = before.get(sheet)
    const why = own ? refusal(own, row, column) : 'the workbook has no such sheet'
    if (why !== undefined) left.push({ cell: placeOf(sheet, row, column), why })
    return why === undefined
  })
  const changed = new Map<string, string>()
  const xmlOf = (sheet: string): string => changed.get(sheet) ?? text(paths.get(sheet) ?? '')
  let [formulas, replaced] = [false, false]
  // Results first: places found in the XML hold only until it is changed.
  for (const [sheet, cells] of bySheet(dependants(before, taken))) {
    formulas = true
    changed.set(sheet, withoutResults(xmlOf(sheet), cells))
  }
  for (const { sheet, row, column, content } of taken) {
    const xml = xmlOf(sheet)
    const own = sheetElements(xml)
    replaced ||= cellAt(own, row, column)?.formula !== undefined
    changed.set(sheet, changeCell(xml, own, row, column, content))
  }
  const made: Record<string, string> = Object.fromEntries(
    [...changed].map(([sheet, xml]) => [paths.get(sheet) ?? '', xml]),
  )
  if (formulas || replaced) made[WORKBOOK] = recalculated(text(WORKBOOK))
  // The order of calculation names cells that no longer hold a formula; spreadsheets make it again.
  const dropped = replaced && parts[CHAIN] !== undefined
  if (dropped) {
    made[TYPES] = without(text(TYPES), ({ attributes }) => attributes.PartName === `/${CHAIN}`)
    made[RELATIONSHIPS] = without(text(RELATIONSHIPS), ({ attributes }) =>
      (attributes.Target ?? '').endsWith('calcChain.xml'),
    )
  }
  const files: Zippable = {}
  for (const [path, part] of Object.entries(parts)) {
    const own = made[path]
    if (!(dropped && path === CHAIN)) files[path] = own === undefined ? part : strToU8(own)
  }
  return { bytes: zipSync(files), left }
}

/** Sheets of other kinds, as charts, have no cells. */
function elements(part: Uint8Array | undefined, sheet: string): [string, SheetElements][] {
  const xml = part && strFromU8(part)
  return xml?.includes('sheetData') ? [[sheet, sheetElements(xml)]] : []
}

function withoutResults(xml: string, cells: readonly CellElement[]): string {
  return cells
    .flatMap(({ value }) => value ?? [])
    .toSorted((a, b) => b.start - a.start)
    .reduce((text, { start, end }) => text.slice(0, start) + text.slice(end), xml)
}

function bySheet(found: readonly { sheet: string; cell: CellElement }[]): Map<string, CellElement[]> {
  const sheets = new Map<string, CellElement[]>()
  for (const { sheet, cell } of found) sheets.set(sheet, [...(sheets.get(sheet) ?? []), cell])
  return sheets
}

const cellAt = ({ rows }: SheetElements, row: number, column: number): CellElement | undefined =>
  rows.find((one) => one.row === row)?.cells.find((one) => one.column === column)

const placeOf = (sheet: string, row: number, column: number): string =>
  joinReference(sheet, cellAddress(row, column))
