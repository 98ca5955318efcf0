import type { Workbook, Worksheet } from 'exceljs'
import { results } from '../../../catalogue/figures.js'
import { unitText } from '../../../catalogue/shown-figure.js'
import { monthInWords } from '../../../catalogue/words.js'
import { columnLetters } from '../../workbook/address.js'
import type { ChartDescription } from '../../workbook/chart/description.js'
import { linkTo } from '../../workbook/file-link.js'
import { setUpPage } from '../../workbook/page.js'
import { dress, fills, fonts, heightFor, underline, wrap } from '../../workbook/styles.js'
import type { Register } from '../register.js'
import { type MonthFigures, TREND_HEAD, TREND_SHEET, type TrendFigure, trendFigures } from '../trend.js'
import { titleOf } from './register-sheet.js'
import { ALL_TESTS_ROW, isArray, monthFormula, TOTALS_SHEET, totalHead } from './totals-sheet.js'

/** Number format, and the column of sheet Totals that holds the figure of all tests, counted from 0. */
const columns: Readonly<Record<TrendFigure, readonly [numFmt: string, onTotals: number]>> = {
  tests: ['0', 0],
  counting: ['0', 1],
  meets: ['0', 2],
  misses: ['0', 3],
  notValid: ['0', 4],
  firstTests: ['0', 6],
  firstMet: ['0', 7],
  firstPassRate: ['0 %', 8],
  medianN50: ['0.00', 9],
  billable: ['0', 14],
}
const COLUMNS = trendFigures.length + 2
const FROM_WIDTH = 34

/** Month by month: months whose tests are in the register are formulas on it, earlier ones are as they were. */
export function writeTrendsSheet(
  workbook: Workbook,
  register: Register,
  seenFrom: (file: string) => string,
): ChartDescription[] {
  const { trend, month } = register
  const sheet = workbook.addWorksheet(TREND_SHEET, { views: [{ showGridLines: false }] })
  sheet.columns = [17, ...trendFigures.map(() => 10.5), FROM_WIDTH].map((width) => ({ width }))
  dress(sheet.getCell('A1'), { font: fonts.title }).value = 'Months'
  sheet.getRow(1).height = 26
  dress(sheet.getCell('A2'), { font: fonts.muted }).value =
    month === undefined
      ? 'Formulas on sheet Register: they follow corrections, and together they come to the totals. A month without tests has no line.'
      : `${monthInWords(month)} follows sheet Totals. Earlier months are as their own registers had them and do not change. A month without tests has no line.`
  sheet.getRow(TREND_HEAD).height = 28
  const heads = ['Month', ...trendFigures.map((key) => totalHead(columns[key][1]) ?? ''), 'Figures from']
  heads.forEach((head, i) => {
    dress(sheet.getCell(TREND_HEAD, i + 1), {
      font: fonts.bold,
      fill: fills.heading,
      alignment: {
        wrapText: true,
        vertical: 'bottom',
        horizontal: i === 0 || i === COLUMNS - 1 ? 'left' : 'right',
        indent: i === COLUMNS - 1 ? 1 : 0,
      },
    }).value = head
  })
  trend.forEach((one, k) => {
    writeMonth(sheet, TREND_HEAD + 1 + k, one, register, seenFrom)
  })
  const last = TREND_HEAD + Math.max(1, trend.length)
  const charts = trend.length > 1 ? [passRate(trend, last), median(trend, last)] : []
  setUpPage(sheet, {
    landscape: true,
    title: titleOf(register),
    lastRow: last + (charts.length > 0 ? 22 : 0),
    lastColumn: COLUMNS,
  })
  return charts
}

function writeMonth(
  sheet: Worksheet,
  row: number,
  one: MonthFigures,
  { month, rows }: Register,
  seenFrom: (file: string) => string,
): void {
  dress(sheet.getCell(row, 1), { alignment: { vertical: 'top' } }).value = monthInWords(one.month)
  const live = one.from === undefined && (month === undefined || one.month === month)
  trendFigures.forEach((key, i) => {
    const [numFmt, onTotals] = columns[key]
    const value = one[key]
    const cell = dress(sheet.getCell(row, i + 2), {
      numFmt,
      alignment: { horizontal: 'right', vertical: 'top' },
    })
    const result = value ?? ''
    if (!live) cell.value = value ?? null
    else if (month !== undefined)
      cell.value = { formula: `${TOTALS_SHEET}!$${columnLetters(onTotals + 2)}$${ALL_TESTS_ROW}`, result }
    else {
      const plain = { formula: monthFormula(onTotals, one.month, rows.length) ?? '', result }
      // The type of an array formula is missing from exceljs's own union of cell values.
      cell.value = isArray(onTotals) ? Object.assign(plain, { shareType: 'array', ref: cell.address }) : plain
    }
  })
  const from = dress(sheet.getCell(row, COLUMNS), {
    alignment: { ...wrap, horizontal: 'left', indent: 1 },
  })
  if (one.from !== undefined) {
    linkTo(from, one.from, seenFrom(one.from))
    sheet.getRow(row).height = heightFor(one.from, FROM_WIDTH)
  } else from.value = live ? 'this register' : 'files given'
  underline(sheet, row, COLUMNS)
}

type Trend = Register['trend']

const chart = (
  trend: Trend,
  last: number,
  key: TrendFigure,
  text: {
    readonly title: string
    readonly axis: string
    readonly numberFormat: string
    readonly max?: number
  },
  fromCol: number,
): ChartDescription => {
  const letter = String.fromCharCode(66 + trendFigures.indexOf(key))
  return {
    sheetName: TREND_SHEET,
    anchor: { fromCol, fromRow: last + 1, toCol: fromCol + 6, toRow: last + 21 },
    title: text.title,
    altText: `${text.title}, month by month`,
    kind: 'column',
    xAxis: { title: 'month' },
    yAxis: {
      title: text.axis,
      min: 0,
      numberFormat: text.numberFormat,
      ...(text.max !== undefined && { max: text.max }),
    },
    series: [
      {
        name: text.title,
        xRef: { sheet: TREND_SHEET, range: `A${TREND_HEAD + 1}:A${last}` },
        xCache: trend.map(({ month }) => monthInWords(month)),
        yRef: { sheet: TREND_SHEET, range: `${letter}${TREND_HEAD + 1}:${letter}${last}` },
        yCache: trend.map((one) => one[key] ?? null),
      },
    ],
    legend: 'none',
  }
}

const passRate = (trend: Trend, last: number): ChartDescription =>
  chart(
    trend,
    last,
    'firstPassRate',
    { title: 'First-time pass rate', axis: 'share of first tests', numberFormat: '0 %', max: 1 },
    0,
  )

const median = (trend: Trend, last: number): ChartDescription =>
  chart(
    trend,
    last,
    'medianN50',
    { title: `Median of ${results.n50.short}`, axis: unitText(results.n50.unit), numberFormat: '0.0' },
    6,
  )
