import type { Workbook } from 'exceljs'
import { results } from '../../../catalogue/figures.js'
import { unitText } from '../../../catalogue/shown-figure.js'
import type { ChartDescription } from '../../workbook/chart/description.js'
import { linkTo } from '../../workbook/file-link.js'
import { setUpPage } from '../../workbook/page.js'
import { dress, fills, fonts, underline } from '../../workbook/styles.js'
import type { Register } from '../register.js'
import { TREND_HEAD, TREND_SHEET, type TrendFigure, trendFigures } from '../trend.js'
import { titleOf } from './register-sheet.js'

/** Heading, number format, and the column of sheet Totals that holds the figure of all tests. */
const columns: Readonly<Record<TrendFigure, readonly [head: string, numFmt: string, onTotals: string]>> = {
  tests: ['rows', '0', 'B'],
  counting: ['included\nin totals', '0', 'C'],
  meets: ['meets', '0', 'D'],
  misses: ['fails', '0', 'E'],
  notValid: ['not\nvalid', '0', 'F'],
  firstTests: ['first tests\njudged', '0', 'H'],
  firstMet: ['passed\nfirst time', '0', 'I'],
  firstPassRate: ['first-time\npass rate', '0 %', 'J'],
  medianN50: [`${results.n50.short} median\n${unitText(results.n50.unit)}`, '0.00', 'K'],
  billable: ['to bill', '0', 'P'],
}
const COLUMNS = trendFigures.length + 2

/** Month by month: the month of the register follows sheet Totals, earlier ones are as they were. */
export function writeTrendsSheet(workbook: Workbook, register: Register): ChartDescription[] {
  const { trend, month } = register
  const sheet = workbook.addWorksheet(TREND_SHEET, { views: [{ showGridLines: false }] })
  sheet.columns = [11, ...trendFigures.map(() => 11), 30].map((width) => ({ width }))
  dress(sheet.getCell('A1'), { font: fonts.title }).value = 'Months'
  sheet.getRow(1).height = 26
  dress(sheet.getCell('A2'), { font: fonts.muted }).value =
    'The month of this register follows sheet Totals. Earlier months come from the files given, or from the register named. Their figures are fixed: correcting, sorting or filtering does not change them.'
  sheet.getRow(TREND_HEAD).height = 28
  ;['Month', ...trendFigures.map((key) => columns[key][0]), 'Copied from'].forEach((head, i) => {
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
    const row = TREND_HEAD + 1 + k
    dress(sheet.getCell(row, 1), {}).value = one.month
    trendFigures.forEach((key, i) => {
      const [, numFmt, onTotals] = columns[key]
      const value = one[key]
      const cell = dress(sheet.getCell(row, i + 2), { numFmt, alignment: { horizontal: 'right' } })
      if (one.month === month && one.from === undefined)
        cell.value = { formula: `Totals!$${onTotals}$5`, result: value ?? '' }
      else cell.value = value ?? null
    })
    if (one.from !== undefined) linkTo(sheet.getCell(row, COLUMNS), one.from, one.from)
    underline(sheet, row, COLUMNS)
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

type Trend = Register['trend']

const chart = (
  trend: Trend,
  last: number,
  key: TrendFigure,
  text: { readonly title: string; readonly axis: string; readonly numberFormat: string },
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
    yAxis: { title: text.axis, min: 0, numberFormat: text.numberFormat },
    series: [
      {
        name: text.title,
        xRef: { sheet: TREND_SHEET, range: `A${TREND_HEAD + 1}:A${last}` },
        xCache: trend.map(({ month }) => month),
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
    { title: 'First-time pass rate', axis: 'share of first tests', numberFormat: '0 %' },
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
