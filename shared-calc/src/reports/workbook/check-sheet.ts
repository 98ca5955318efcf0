import type { Workbook, Worksheet } from 'exceljs'
import { cited } from '../../catalogue/sources.js'
import type { Evaluation, Finding, TestRecord } from '../../contract/record/index.js'
import { pathText, placeWords } from '../../contract/record/index.js'
import { reference } from './address.js'
import { writeRecordRows } from './check-record.js'
import { CHECK_WIDTHS, CHECK_COLUMNS as COLUMNS, heads, nameRow, numberRow, textRow } from './check-rows.js'
import { writeShownRows } from './check-shown.js'
import type { PublishedFigure } from './figures.js'
import { leavesOf } from './leaves.js'
import { writeLine } from './live-cell.js'
import { setUpPage } from './page.js'
import type { Places } from './places.js'
import { RECORD } from './record-sheet.js'
import { dress, fonts, headingRow, heightFor, wrap } from './styles.js'

export const CHECK = 'Check'
/** Row of the first finding. */
const FINDINGS = 7

/** Characters that fit a line of a finding: the columns after the first, together. */
const FINDING_LINE = 95

/** What Summary refers to on this sheet. */
export interface CheckPlaces {
  /** Number of cells that differ from what was recorded. */
  readonly differing: string
  /** Number of findings that invalidate the test. */
  readonly invalidating: string
  /** Row of each finding; its severity is in A, its message in B. */
  readonly findingRows: readonly number[]
  /** The first row with a state, and the next row that is free. */
  readonly states: { readonly from: number; readonly next: number }
}

/** Recorded against present: every published figure and every input, red where they differ; and the findings in full. */
export function writeCheckSheet(
  workbook: Workbook,
  record: TestRecord,
  figures: readonly PublishedFigure[],
  findings: readonly Finding[],
  places: Places,
): CheckPlaces {
  const sheet = workbook.addWorksheet(CHECK, { views: [{ showGridLines: false }] })
  sheet.columns = CHECK_WIDTHS.map((width) => ({ width }))
  dress(sheet.getCell('A1'), { font: fonts.title }).value = 'Check'
  const findingRows = writeFindings(sheet, findings, FINDINGS, record)
  const figuresStart = FINDINGS + Math.max(findings.length, 1) + 2
  const inputs = leavesOf(record).filter(({ keys }) => places.field(pathText(keys)) !== undefined)
  const inputsStart = figuresStart + figures.length + 3
  figureRows(sheet, figures, figuresStart, places)
  inputRows(sheet, inputs, inputsStart, places, record)
  return {
    differing: `${CHECK}!$B$2`,
    invalidating: `${CHECK}!$B$3`,
    findingRows,
    states: { from: figuresStart, next: inputsStart + inputs.length + 3 },
  }
}

/** What else is checked, once the sheets it looks at are written; then the count of all that differs. */
export function finishCheckSheet(
  workbook: Workbook,
  summary: Worksheet,
  { states: { from, next } }: CheckPlaces,
  issued: { readonly record: TestRecord; readonly evaluation: Evaluation },
  limit: number,
): void {
  const sheet = workbook.getWorksheet(CHECK)
  const record = workbook.getWorksheet(RECORD)
  if (!sheet || !record) throw new RangeError('the workbook is not written yet')
  const shown = writeShownRows(sheet, summary, next, limit)
  const last = writeRecordRows(sheet, record, issued, shown + 2)
  writeState(sheet, { from, last }, issued.evaluation.findings)
  colourStates(sheet, `$E$${from}:$E$${last}`)
  writeLine(sheet, last + 2, CANNOT, { columns: COLUMNS, perRow: 125, font: fonts.small })
  setUpPage(sheet, { landscape: false, title: CHECK, lastRow: last + 2, lastColumn: COLUMNS })
}

const CANNOT =
  'Formulas cannot check the chart, pictures, how cells look, the digests and the signature. Re-run the file for these: draughtbook rerun.'

function writeState(
  sheet: Worksheet,
  { from, last }: { readonly from: number; readonly last: number },
  findings: readonly Finding[],
): void {
  const states = `$E$${from}:$E$${last}`

  dress(sheet.getCell('A2'), { font: fonts.bold }).value = 'cells that differ from the issued record'
  dress(sheet.getCell('B2'), { font: fonts.bold, alignment: { horizontal: 'left' } }).value = {
    formula: `COUNTIF(${states},"differs")`,
    result: 0,
  }
  dress(sheet.getCell('C2'), { font: fonts.bold }).value = {
    formula: 'IF(B2=0,"agrees with the issued record","edited since issue")',
    result: 'agrees with the issued record',
  }
  dress(sheet.getCell('A4'), {}).value = 'first cell that differs'
  dress(sheet.getCell('B4'), { alignment: { horizontal: 'left' } }).value = {
    formula: `IF(B2=0,"none",INDEX($A$${from}:$A$${last},MATCH("differs",${states},0)))`,
    result: 'none',
  }
  dress(sheet.getCell('A3'), {}).value = 'findings that invalidate the test, when it was issued'
  dress(sheet.getCell('B3'), { alignment: { horizontal: 'left' } }).value = findings.filter(
    ({ severity }) => severity === 'invalidates',
  ).length
}

function writeFindings(
  sheet: Worksheet,
  findings: readonly Finding[],
  start: number,
  record: TestRecord,
): number[] {
  headingRow(sheet, start - 1, 'Findings (when issued)', COLUMNS)
  if (findings.length === 0) dress(sheet.getRow(start).getCell(1), {}).value = 'none'
  return findings.map((finding, i) => {
    const { severity, message, remedy, cells, where } = finding
    const row = start + i
    dress(sheet.getRow(row).getCell(1), { font: fonts.bold, alignment: wrap }).value = severity
    sheet.mergeCells(row, 2, row, COLUMNS)
    const source = cited(finding)
    const parts = [
      message,
      remedy && `What to do: ${remedy}`,
      source && `Source: ${source}.`,
      `Where: ${(cells?.length ? cells : where.map((path) => placeWords(path, record))).join('; ')}.`,
    ]
    const text = parts.filter(Boolean).join(' ')
    dress(sheet.getRow(row).getCell(2), { alignment: wrap }).value = text
    dress(sheet.getRow(row).getCell(1), { alignment: wrap }).value = severity
    sheet.getRow(row).height = heightFor(text, FINDING_LINE)
    return row
  })
}

function figureRows(
  sheet: Worksheet,
  figures: readonly PublishedFigure[],
  start: number,
  places: Places,
): void {
  heads(sheet, start, 'Figures')
  figures.forEach(({ label, unit, recorded, block, symbol, restOf }, i) => {
    const row = start + 1 + i
    nameRow(sheet, row, unit ? `${label}, ${unit}` : label, fonts.body)
    numberRow(sheet, row, recorded, reference(places.symbol(block, symbol)), restOf)
  })
}

function inputRows(
  sheet: Worksheet,
  inputs: ReturnType<typeof leavesOf>,
  start: number,
  places: Places,
  record: TestRecord,
): void {
  heads(sheet, start, 'Inputs')
  inputs.forEach(({ keys, value }, i) => {
    const row = start + 1 + i
    const cell = places.field(pathText(keys))
    if (!cell) return
    const address = reference(cell)
    if (typeof value === 'number') numberRow(sheet, row, value, address)
    else textRow(sheet, row, value, address)
    nameRow(sheet, row, placeWords(pathText(keys), record))
  })
}

function colourStates(sheet: Worksheet, states: string): void {
  const colour = (argb: string, text: string) => ({
    type: 'pattern' as const,
    pattern: 'solid' as const,
    bgColor: { argb },
    fgColor: { argb: text },
  })
  sheet.addConditionalFormatting({
    ref: states.replaceAll('$', ''),
    rules: [
      {
        type: 'cellIs',
        operator: 'equal',
        formulae: ['"differs"'],
        priority: 1,
        style: { fill: colour('FFF4A6A6', 'FFF4A6A6'), font: { bold: true, color: { argb: 'FF8B0000' } } },
      },
      {
        type: 'cellIs',
        operator: 'equal',
        formulae: ['"agrees"'],
        priority: 2,
        style: { font: { color: { argb: 'FF1B6E3C' } } },
      },
    ],
  })
  sheet.addConditionalFormatting({
    ref: 'C2',
    rules: [
      {
        type: 'expression',
        formulae: ['$B$2>0'],
        priority: 3,
        style: { fill: colour('FFF4A6A6', 'FFF4A6A6'), font: { bold: true, color: { argb: 'FF8B0000' } } },
      },
    ],
  })
}
