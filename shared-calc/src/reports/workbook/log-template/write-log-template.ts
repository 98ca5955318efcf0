import ExcelJS, { type Cell, type DataValidation, type Worksheet } from 'exceljs'
import { InputError } from '../../../contract/problem.js'
import { LAYOUT_SHEET, layoutPieces } from '../../../log/index.js'
import { methodById } from '../../../methods/index.js'
import { CAUTIONS_DEFER } from '../../../site/preparation/cautions.js'
import { setUpPage } from '../page.js'
import { dress, fills, fonts, wrap } from '../styles.js'
import { workbookBytes } from '../zip/workbook-parts.js'
import { type Check, METHOD_PATH } from './entries.js'
import { TEMPLATE_SHEET, templateLayout } from './layout.js'
import { COLUMN_WIDTHS, HALVES, LAST_COLUMN, type PlacedEntry, type Places, placesFor } from './places.js'
import { writeTables } from './tables.js'

export interface TemplateOptions {
  /** Id of the test method, filled in beforehand. */
  readonly method: string
  /** Rows for readings in each direction. */
  readonly readings: number
}

/** Most rows that still fit one page. */
export const MOST_READINGS = 20
const LISTS = 'Lists'

/**
 * An empty test log as a workbook of one A4 page: cells to fill in are marked and checked as they are typed. It carries
 * its layout, so that it is read without a question once it is filled in.
 * @throws InputError for a method that is not known or a number of readings that does not fit the page
 */
export async function writeLogTemplate({ method, readings }: TemplateOptions): Promise<Uint8Array> {
  const { title } = methodById(method)
  if (!Number.isInteger(readings) || readings < 1 || readings > MOST_READINGS)
    throw new InputError([
      {
        path: 'readings',
        message: `the number of readings must be a whole number from 1 to ${MOST_READINGS}`,
      },
    ])
  const workbook = new ExcelJS.Workbook()
  workbook.creator = 'Draughtbook'
  const sheet = workbook.addWorksheet(TEMPLATE_SHEET, { views: [{ showGridLines: false }] })
  sheet.columns = COLUMN_WIDTHS.map((width) => ({ width }))
  const places = placesFor(readings)
  const lists = workbook.addWorksheet(LISTS, { state: 'hidden' })
  writeHead(sheet, title)
  writeEntries(sheet, places, listWriter(lists))
  const methodEntry = places.entries.find(({ path }) => path === METHOD_PATH)
  if (methodEntry) valueCell(sheet, methodEntry).value = title
  writeTables(sheet, places, readings)
  writeFoot(sheet, places)
  setUpPage(sheet, {
    landscape: false,
    title: `Test log, ${title}`,
    lastRow: places.lastRow,
    lastColumn: LAST_COLUMN,
    onePage: true,
  })
  const layout = workbook.addWorksheet(LAYOUT_SHEET, { state: 'hidden' })
  for (const [index, piece] of layoutPieces(templateLayout(readings)).entries())
    layout.getCell(index + 1, 1).value = piece
  return workbookBytes(workbook)
}

function writeHead(sheet: Worksheet, method: string): void {
  dress(sheet.getCell('A1'), { font: fonts.title }).value = 'Airtightness test log'
  dress(sheet.getCell('A2'), {
    font: fonts.muted,
  }).value = `Fill in the yellow cells (* needed). Pressures are inside minus outside, so those of depressurisation are negative. ${method}.`
}

function writeEntries(
  sheet: Worksheet,
  { headings, entries }: Places,
  list: (words: readonly string[]) => string,
): void {
  for (const { row, half, title } of headings) {
    const first = HALVES[half]
    for (let column = first; column < first + 4; column++)
      dress(sheet.getCell(row, column), { font: fonts.heading, fill: fills.heading })
    sheet.getCell(row, first).value = title
  }
  for (const entry of entries) {
    const { row, half, label, unit, needed, check } = entry
    const first = HALVES[half]
    dress(sheet.getCell(row, first), { font: fonts.body }).value = `${label}${needed ? ' *' : ''}`
    const cell = entryCell(valueCell(sheet, entry), check)
    // Words may run on into the place of a unit.
    if (unit === undefined) sheet.mergeCells(row, first + 2, row, first + 3)
    else dress(sheet.getCell(row, first + 3), { font: fonts.muted, alignment: { indent: 1 } }).value = unit
    cell.dataValidation = validation(entry, list)
  }
}

const valueCell = (sheet: Worksheet, { row, half }: PlacedEntry): Cell => sheet.getCell(row, HALVES[half] + 2)

function entryCell(cell: Cell, check: Check): Cell {
  dress(cell, {
    font: fonts.body,
    fill: fills.given,
    alignment: { horizontal: check.kind === 'number' ? 'right' : 'left', shrinkToFit: true },
    ...(check.kind === 'day' && { numFmt: 'd mmm yyyy' }),
  })
  cell.border = { bottom: { style: 'hair', color: { argb: 'FF9AA5B1' } } }
  return cell
}

/** What the spreadsheet program checks as a value is typed; it warns and explains. */
function validation(
  { label, check }: PlacedEntry,
  list: (words: readonly string[]) => string,
): DataValidation {
  const told = { allowBlank: true, showErrorMessage: true, errorTitle: label } as const
  if (check.kind === 'words')
    return {
      ...told,
      type: 'list',
      formulae: [list(Object.keys(check.words))],
      error: 'Choose one from the list.',
    }
  if (check.kind === 'number')
    return {
      ...told,
      type: 'decimal',
      operator: 'between',
      formulae: [check.from, check.to],
      error: `A number from ${check.from} to ${check.to} is expected.`,
    }
  if (check.kind === 'day')
    return {
      ...told,
      type: 'date',
      operator: 'between',
      formulae: [new Date('2000-01-01T00:00:00Z'), new Date('2099-12-31T00:00:00Z')],
      error: 'A date is expected, such as 2026-10-14.',
    }
  return {
    ...told,
    type: 'textLength',
    operator: 'lessThanOrEqual',
    formulae: [200],
    error: 'At most 200 characters.',
  }
}

/** Lists of words are on a sheet of their own: some are longer than a validation may hold. */
function listWriter(lists: Worksheet): (words: readonly string[]) => string {
  let column = 0
  return (words) => {
    column++
    for (const [index, word] of words.entries()) lists.getCell(index + 1, column).value = word
    const { letter } = lists.getColumn(column)
    return `${LISTS}!$${letter}$1:$${letter}$${words.length}`
  }
}

function writeFoot(sheet: Worksheet, { lastRow }: Places): void {
  sheet.mergeCells(lastRow, 1, lastRow, LAST_COLUMN)
  sheet.getRow(lastRow).height = 24
  dress(sheet.getCell(lastRow, 1), {
    font: fonts.small,
    alignment: wrap,
  }).value = `Before you start: appliances that burn fuel are off and cold, nobody goes in or out during a run, at most 100 Pa. ${CAUTIONS_DEFER}`
}
