import type { CellValue, Workbook, Worksheet } from 'exceljs'
import { isMadeOutsideRecord } from '../../catalogue/findings/finding.js'
import type { TestRecord } from '../../contract/record/index.js'
import { cautions } from '../../site/preparation/cautions.js'
import { reference } from './address.js'
import { CHECK } from './check-sheet.js'
import { dayFrom } from './live-cell.js'
import { setUpPage } from './page.js'
import type { Places } from './places.js'
import { dress, fonts, headingRow, heightFor, wrap } from './styles.js'
import { writeHead } from './summary-head.js'
import { type ChartRows, SUMMARY, SUMMARY_COLUMNS, type SummaryInput } from './summary-input.js'
import { writeOfficialFigures } from './summary-official.js'
import { writeResultsTable } from './summary-results.js'
import { writeVerdict } from './summary-verdict.js'
import { wrappedLines } from './wrapped-lines.js'

/** Width of each column, in characters. */
const CHARACTERS = [41, 14, 14, 17, 13, 24]
const CHART_ROWS = 24
const FINDINGS_SHOWN = 6
/** Lines that a name or address is shown with at most; it is whole on sheet Readings. */
const MOST_LINES = 6

/** Fills the one page that goes to the client: who and what, result, verdict, curve, findings, signature, cautions. */
export function fillSummarySheet(sheet: Worksheet, input: SummaryInput): ChartRows {
  sheet.columns = CHARACTERS.map((width) => ({ width }))
  writeHead(sheet, 'Airtightness test: summary', input.pictures)
  let row = writeIdentity(sheet, input, 2)
  row = writeVerdict(sheet, input, row + 1)
  row = writeOfficialFigures(sheet, input, writeResultsTable(sheet, input, row + 1))
  headingRow(sheet, row + 1, 'Leakage curve', SUMMARY_COLUMNS)
  const chart = { from: row + 1, to: row + 1 + CHART_ROWS }
  row = writeFindings(sheet, input, chart.to + 2)
  row = writeSignature(sheet, row + 1)
  row = writeCautions(sheet, row + 1)
  setUpPage(sheet, {
    landscape: false,
    title: 'Airtightness test: summary',
    lastRow: row,
    lastColumn: SUMMARY_COLUMNS,
    onePage: true,
  })
  return chart
}

/** The summary comes first in the workbook but is filled last, when every cell it refers to has its place. */
export const addSummarySheet = (workbook: Workbook): Worksheet =>
  workbook.addWorksheet(SUMMARY, { views: [{ showGridLines: false }] })

function writeIdentity(
  sheet: Worksheet,
  { record, method, places, check }: SummaryInput,
  start: number,
): number {
  const left: [string, string][] = [
    ['Site', 'building.site'],
    ['Address', 'building.address'],
    ['Client', 'test.client'],
    ['Stage', 'test.stage'],
    ['Preparation', 'test.preparation'],
    ['Purpose', 'test.purpose'],
  ]
  const right: [string, string][] = [
    ['Test number', 'test.id'],
    ['Date', 'test.date'],
    ['Tester', 'test.tester'],
    ['Organisation', 'test.organisation'],
    ['Internal volume, m³', 'building.volume_m3'],
    ['Volume basis', 'building.volumeBasis'],
  ]
  dress(sheet.getCell(start, 1), { font: fonts.muted }).value = `Method: ${method.title}`
  const edited = sheet.getCell(start, 3)
  sheet.mergeCells(start, 3, start, SUMMARY_COLUMNS)
  dress(edited, {
    font: { ...fonts.bold, color: { argb: 'FF8B0000' } },
    alignment: { horizontal: 'right' },
  }).value = {
    formula: `IF(${check.differing}=0,"","EDITED SINCE ISSUE: "&${check.differing}&" cells differ, see sheet ${CHECK}")`,
    result: '',
  }
  identity(sheet, start + 1, 1, 2, SUMMARY_COLUMNS, ['Building', 'building.name'], record, places)
  left.forEach((pair, i) => {
    const row = start + 2 + i
    identity(sheet, row, 1, 2, 3, pair, record, places)
    const other = right[i]
    if (other) identity(sheet, row, 4, 5, 6, other, record, places)
  })
  return start + 2 + left.length
}

function identity(
  sheet: Worksheet,
  row: number,
  label: number,
  from: number,
  to: number,
  [name, path]: [string, string],
  record: TestRecord,
  places: Places,
): void {
  const cell = places.field(path)
  dress(sheet.getCell(row, label), { font: fonts.muted, alignment: { vertical: 'top' } }).value = name
  sheet.mergeCells(row, from, row, to)
  const value = sheet.getCell(row, from)
  dress(value, { alignment: { horizontal: 'left', vertical: 'top', wrapText: true } })
  if (cell) {
    const text = fieldOf(record, path)
    value.value =
      path === 'test.date'
        ? dayFrom(cell, String(text))
        : { formula: reference(cell), result: text as string }
    const width = CHARACTERS.slice(from - 1, to).reduce((sum, characters) => sum + characters, 0)
    const lines = Math.min(MOST_LINES, wrappedLines(String(text), 1.15 * width))
    const room = sheet.getRow(row)
    if (lines > 1) room.height = Math.max(room.height ?? 0, 13.5 * lines)
  } else {
    value.value = 'not logged'
    value.font = fonts.muted
  }
}

function fieldOf(record: TestRecord, path: string): unknown {
  return path.split('.').reduce<unknown>((part, key) => (part as Record<string, unknown>)[key], record)
}

function writeFindings(sheet: Worksheet, { evaluation, check }: SummaryInput, start: number): number {
  const { findings } = evaluation
  headingRow(sheet, start, 'Findings', SUMMARY_COLUMNS)
  // Notes on how log and photos were read do not concern the client: they are on sheet Report.
  const client = check.findingRows.flatMap((row, i) => {
    const finding = findings[i]
    return finding && !(finding.severity === 'note' && isMadeOutsideRecord(finding.rule))
      ? [{ row, finding }]
      : []
  })
  const shown = client.slice(0, client.length > FINDINGS_SHOWN + 1 ? FINDINGS_SHOWN : client.length)
  const lines: [CellValue, CellValue][] = shown.map(({ row, finding }) => [
    { formula: `${CHECK}!$A$${row}`, result: finding.severity },
    finding.message,
  ])
  const more = findings.length - shown.length
  if (findings.length === 0) lines.push(['none', 'No problems found.'])
  if (more > 0)
    lines.push([null, `${shown.length > 0 ? 'and ' : ''}${more} more in the test report, sheet Report`])
  lines.forEach(([severity, message], i) => {
    const row = start + 1 + i
    dress(sheet.getCell(row, 1), { font: fonts.bold, alignment: { vertical: 'top' } }).value = severity
    sheet.mergeCells(row, 2, row, SUMMARY_COLUMNS)
    dress(sheet.getCell(row, 2), { alignment: wrap }).value = message
    sheet.getRow(row).height = heightFor(String(message), 104)
  })
  return start + 1 + lines.length
}

function writeSignature(sheet: Worksheet, row: number): number {
  sheet.getRow(row + 1).height = 22
  const places: [number, number, string][] = [
    [1, 1, 'Tester'],
    [2, 4, 'Signature'],
    [5, 6, 'Date'],
  ]
  for (const [from, to, label] of places) {
    for (let column = from; column <= to; column += 1)
      sheet.getCell(row + 1, column).border = { bottom: { style: 'thin', color: { argb: 'FF52606D' } } }
    dress(sheet.getCell(row + 2, from), { font: fonts.small }).value = label
  }
  return row + 3
}

function writeCautions(sheet: Worksheet, row: number): number {
  sheet.mergeCells(row, 1, row, SUMMARY_COLUMNS)
  const text = cautions.join(' ')
  dress(sheet.getCell(row, 1), { font: fonts.small, alignment: wrap }).value = text
  sheet.getRow(row).height = 11.5 * wrappedLines(text, 150)
  return row
}
