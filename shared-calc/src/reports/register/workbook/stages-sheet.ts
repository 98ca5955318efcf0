import type { Workbook, Worksheet } from 'exceljs'
import { results } from '../../../catalogue/figures.js'
import { unitText } from '../../../catalogue/shown-figure.js'
import { toSheet } from '../../../engine/index.js'
import { changeBetweenTests } from '../../../formulas/stage-change.js'
import { columnLetters } from '../../workbook/address.js'
import { setUpPage } from '../../workbook/page.js'
import { dress, fills, fonts, heightFor, underline, wrap } from '../../workbook/styles.js'
import type { HouseChange } from '../houses.js'
import type { Register } from '../register.js'
import type { QuantityChange } from '../stage-change.js'
import { byNumber } from './places.js'
import { titleOf } from './register-sheet.js'

export const STAGES_SHEET = 'Stages'
const HEAD_ROW = 5
const REMARK_WIDTH = 40

const quantities = [
  { key: 'n50', head: `${results.n50.short}, ${unitText(results.n50.unit)}`, numFmt: '0.000' },
  { key: 'ela4', head: `${results.ela4.short}, ${unitText(results.ela4.unit)}`, numFmt: '0.0' },
] as const
type Key = (typeof quantities)[number]['key']

const about = [
  { head: 'Site', width: 20 },
  { head: 'Plot', width: 14 },
  { head: 'from\nNo.', width: 5 },
  { head: 'stage', width: 12 },
  { head: 'to\nNo.', width: 5 },
  { head: 'stage', width: 12 },
]
/** Columns of the numbers by which the register's rows are found. */
const EARLIER_NUMBER = 3
const LATER_NUMBER = 5
const parts = ['earlier', 'later', 'change', 'share', 'lower', 'upper'] as const
const FIRST = about.length + 1
const COLUMNS = about.length + quantities.length * parts.length + 1

/** From test to test of each house: what changed, how sure that is, and where the curves cross. */
export function writeStagesSheet(workbook: Workbook, register: Register): void {
  const sheet = workbook.addWorksheet(STAGES_SHEET, { views: [{ showGridLines: false }] })
  sheet.columns = [
    ...about.map(({ width }) => width),
    ...quantities.flatMap(() => parts.map(() => 7)),
    REMARK_WIDTH,
  ].map((width) => ({ width }))
  dress(sheet.getCell('A1'), { font: fonts.title }).value = 'Stages of each house'
  sheet.getRow(1).height = 26
  dress(sheet.getCell('A2'), { font: fonts.muted }).value =
    'Change from one test of a house to the next. Copies, altered summaries and tests that are not valid are skipped. The 95 % interval of a change includes only the scatter of the fits.'
  writeHeads(sheet)
  if (register.changes.length === 0)
    dress(sheet.getCell(HEAD_ROW + 1, 1), {}).value = 'No house was tested more than once.'
  register.changes.forEach((change, i) => {
    writeChange(sheet, HEAD_ROW + 1 + i, change, register.rows.length)
  })
  const last = HEAD_ROW + Math.max(register.changes.length, 1)
  setUpPage(sheet, {
    landscape: true,
    title: titleOf(register),
    lastRow: last,
    lastColumn: COLUMNS,
    repeat: `${HEAD_ROW - 1}:${HEAD_ROW}`,
  })
}

function writeHeads(sheet: Worksheet): void {
  const head = (
    row: number,
    column: number,
    text: string,
    horizontal: 'left' | 'right' | 'center' = 'left',
  ): void => {
    dress(sheet.getCell(row, column), {
      font: fonts.bold,
      fill: fills.heading,
      alignment: { horizontal, vertical: 'bottom', wrapText: true },
    }).value = text
  }
  sheet.getRow(HEAD_ROW).height = heightFor('two\nlines', 10)
  for (let column = 1; column <= COLUMNS; column += 1) head(HEAD_ROW - 1, column, '')
  about.forEach((one, i) => {
    head(HEAD_ROW, i + 1, one.head)
  })
  quantities.forEach((quantity, q) => {
    const start = FIRST + q * parts.length
    sheet.mergeCells(HEAD_ROW - 1, start, HEAD_ROW - 1, start + parts.length - 1)
    head(HEAD_ROW - 1, start, quantity.head, 'center')
    parts.forEach((part, i) => {
      head(HEAD_ROW, start + i, part === 'share' ? 'in %' : part, 'right')
    })
  })
  head(HEAD_ROW, COLUMNS, '  To check')
}

function writeChange(sheet: Worksheet, row: number, change: HouseChange, tests: number): void {
  const { site, building, earlierRow, earlierStage, laterRow, laterStage, warning } = change
  const texts = [site ?? '', building, earlierRow, earlierStage, laterRow, laterStage]
  texts.forEach((text, i) => {
    dress(sheet.getCell(row, i + 1), { alignment: { ...wrap, horizontal: 'left' } }).value = text
  })
  quantities.forEach(({ key, numFmt }, q) => {
    const found = change[key]
    if (found) writeQuantity(sheet, row, FIRST + q * parts.length, key, numFmt, found, tests)
  })
  if (warning !== undefined) {
    dress(sheet.getCell(row, COLUMNS), { alignment: { ...wrap, horizontal: 'left', indent: 1 } }).value =
      warning
  }
  sheet.getRow(row).height = Math.max(
    heightFor(site ?? '', 20),
    heightFor(building, 14),
    heightFor(warning ?? '', REMARK_WIDTH),
  )
  underline(sheet, row, COLUMNS)
}

function writeQuantity(
  sheet: Worksheet,
  row: number,
  column: number,
  key: Key,
  numFmt: string,
  { earlier, later, change, share, interval }: QuantityChange,
  tests: number,
): void {
  const at = (offset: number) => `${columnLetters(column + offset)}${row}`
  const source = (numberColumn: number) => byNumber(key, `$${columnLetters(numberColumn)}${row}`, tests)
  const formula = (symbol: string) => {
    const step = changeBetweenTests.steps.find((one) => one.symbol === symbol)
    if (!step) throw new RangeError(`no formula for ${symbol}`)
    const places: Record<string, string> = { v_1: at(0), v_2: at(1), d: at(2) }
    return toSheet(step.tree, { cell: (name) => places[name] ?? '', range: () => undefined })
  }
  const cells: [formula: string | undefined, result: number | undefined, numFmt: string][] = [
    [source(EARLIER_NUMBER), earlier, numFmt],
    [source(LATER_NUMBER), later, numFmt],
    [formula('d'), change, signed(numFmt)],
    [formula('s'), share, '+0 %;-0 %;0 %'],
    [undefined, interval?.[0], signed(numFmt)],
    [undefined, interval?.[1], signed(numFmt)],
  ]
  cells.forEach(([text, result, format], i) => {
    const cell = dress(sheet.getCell(row, column + i), {
      numFmt: format,
      alignment: { horizontal: 'right', vertical: 'top' },
    })
    if (result !== undefined) cell.value = text === undefined ? result : { formula: text, result }
  })
}

const signed = (numFmt: string): string => `+${numFmt};-${numFmt};${numFmt}`
