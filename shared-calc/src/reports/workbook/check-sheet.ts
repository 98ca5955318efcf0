import type { Workbook, Worksheet } from 'exceljs'
import type { Finding, TestRecord } from '../../contract/record/index.js'
import { pathText, placeWords } from '../../contract/record/index.js'
import { reference } from './address.js'
import type { PublishedFigure } from './figures.js'
import { leavesOf } from './leaves.js'
import { setUpPage } from './page.js'
import type { Places } from './places.js'
import { dress, fills, fonts, formatFor, headingRow, underline, wrap } from './styles.js'

export const CHECK = 'Check'
const COLUMNS = 5
/** Largest relative difference that still counts as agreement; of a small rest, relative to the whole it is a rest of. */
const TOLERANCE = '1E-9'

/** What Summary refers to on this sheet. */
export interface CheckPlaces {
  /** Number of cells that differ from what was recorded. */
  readonly differing: string
  /** Number of findings that invalidate the test. */
  readonly invalidating: string
  /** Row of each finding; its severity stands in A, its message in B. */
  readonly findingRows: readonly number[]
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
  sheet.columns = [54, 24, 24, 16, 12].map((width) => ({ width }))
  dress(sheet.getCell('A1'), { font: fonts.title }).value = 'Check'
  const findingRows = writeFindings(sheet, findings, 6, record)
  const figuresStart = 6 + Math.max(findings.length, 1) + 2
  const inputs = leavesOf(record).filter(({ keys }) => places.field(pathText(keys)) !== undefined)
  const inputsStart = figuresStart + figures.length + 3
  figureRows(sheet, figures, figuresStart, places)
  inputRows(sheet, inputs, inputsStart, places, record)
  const last = inputsStart + inputs.length + 1
  const states = `$E$${figuresStart}:$E$${last}`
  writeState(sheet, states, findings)
  colourStates(sheet, states)
  setUpPage(sheet, { landscape: false, title: CHECK, lastRow: last, lastColumn: COLUMNS })
  return { differing: `${CHECK}!$B$2`, invalidating: `${CHECK}!$B$3`, findingRows }
}

function writeState(sheet: Worksheet, states: string, findings: readonly Finding[]): void {
  dress(sheet.getCell('A2'), { font: fonts.bold }).value = 'cells that differ from the issued record'
  dress(sheet.getCell('B2'), { font: fonts.bold, alignment: { horizontal: 'left' } }).value = {
    formula: `COUNTIF(${states},"differs")`,
    result: 0,
  }
  dress(sheet.getCell('C2'), { font: fonts.bold }).value = {
    formula: 'IF(B2=0,"agrees with the issued record","edited since issue")',
    result: 'agrees with the issued record',
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
  if (findings.length === 0) dress(sheet.getCell(start, 1), {}).value = 'none'
  return findings.map(({ severity, message, clause, provenance, remedy, cells, where }, i) => {
    const row = start + i
    dress(sheet.getCell(row, 1), { font: fonts.bold, alignment: wrap }).value = severity
    sheet.mergeCells(row, 2, row, COLUMNS)
    const source = [clause, provenance === clause ? undefined : provenance].filter(Boolean).join('; ')
    const parts = [
      message,
      remedy && `What to do: ${remedy}`,
      source && `Source: ${source}.`,
      `Where: ${(cells?.length ? cells : where.map((path) => placeWords(path, record))).join('; ')}.`,
    ]
    const text = parts.filter(Boolean).join(' ')
    dress(sheet.getCell(row, 2), { alignment: wrap }).value = text
    dress(sheet.getCell(row, 1), { alignment: wrap }).value = severity
    sheet.getRow(row).height = 13.5 * Math.max(1, Math.ceil(text.length / 82))
    return row
  })
}

function heads(sheet: Worksheet, row: number, title: string): void {
  headingRow(sheet, row, title, COLUMNS)
  for (const [column, text] of [
    [2, 'recorded'],
    [3, 'now'],
    [4, 'difference'],
    [5, 'state'],
  ] as const)
    dress(sheet.getCell(row, column), {
      font: fonts.bold,
      fill: fills.heading,
      alignment: { horizontal: 'right' },
    }).value = text
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
    dress(sheet.getCell(row, 1), {}).value = unit ? `${label}, ${unit}` : label
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
    dress(sheet.getCell(row, 1), { font: fonts.muted }).value = placeWords(pathText(keys), record)
    const address = reference(cell)
    if (typeof value === 'number') numberRow(sheet, row, value, address)
    else textRow(sheet, row, value, address)
  })
}

function numberRow(sheet: Worksheet, row: number, recorded: number, address: string, restOf = 0): void {
  const sizes = [`ABS(B${row})`, `ABS(C${row})`, ...(restOf > 0 ? [literal(restOf)] : [])]
  const numFmt = formatFor(recorded)
  dress(sheet.getCell(row, 2), { numFmt }).value = recorded
  dress(sheet.getCell(row, 3), { numFmt }).value = { formula: address, result: recorded }
  dress(sheet.getCell(row, 4), { numFmt: '0.0E+00;-0.0E+00;0' }).value = {
    // Where both agree, what rounding leaves between them is not shown as a difference.
    formula: `IF(E${row}="agrees",0,IFERROR(C${row}-B${row},""))`,
    result: 0,
  }
  state(
    sheet,
    row,
    `IF(ISNUMBER(${address}),ABS(C${row}-B${row})<=${TOLERANCE}*MAX(${sizes.join(',')}),FALSE)`,
  )
}

/** Few digits are enough for a tolerance, and programs that save them again keep them. */
const literal = (value: number): string => String(Number(value.toPrecision(3)))

function textRow(sheet: Worksheet, row: number, recorded: string | boolean, address: string): void {
  dress(sheet.getCell(row, 2), { alignment: { horizontal: 'right' } }).value = recorded
  dress(sheet.getCell(row, 3), { alignment: { horizontal: 'right' } }).value = {
    formula: address,
    result: recorded,
  }
  // LibreOffice counts truth values among the numbers.
  const kind = typeof recorded === 'boolean' ? `NOT(ISLOGICAL(${address}))` : `ISNUMBER(${address})`
  state(sheet, row, `IF(${kind},FALSE,EXACT(B${row},C${row}))`)
}

function state(sheet: Worksheet, row: number, agrees: string): void {
  dress(sheet.getCell(row, 5), { alignment: { horizontal: 'right' } }).value = {
    formula: `IF(IFERROR(${agrees},FALSE),"agrees","differs")`,
    result: 'agrees',
  }
  underline(sheet, row, COLUMNS)
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
