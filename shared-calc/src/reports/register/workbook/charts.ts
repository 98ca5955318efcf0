import type { Workbook, Worksheet } from 'exceljs'
import { stages } from '../../../contract/record/index.js'
import { columnLetters } from '../../workbook/address.js'
import type { ChartDescription, ChartSeries } from '../../workbook/chart/description.js'
import { printStyle } from '../../workbook/chart/print-style.js'
import { setUpPage } from '../../workbook/page.js'
import { dress, fonts, headingRow } from '../../workbook/styles.js'
import type { RegisterRow } from '../arrange.js'
import type { Register } from '../register.js'
import { NOT_LOGGED } from '../totals.js'
import { classesOf } from './classes.js'
import { DATE_FORMAT, dateOf, FIRST_ROW, REGISTER_SHEET } from './columns.js'
import { cellOf, columnRange } from './places.js'
import { titleOf } from './register-sheet.js'

const CHARTS_SHEET = 'Charts'
const CHART_DATA_SHEET = 'Chart data'
/** Whether a sheet is one of those; a quantity beyond the first has a pair of its own, named after it. */
export const isChartSheet = (name: string): boolean =>
  [CHARTS_SHEET, CHART_DATA_SHEET].some((own) => name === own || name.startsWith(`${own} `))
const FIRST = 4

/** Serial day number, as spreadsheets count. */
const serial = (iso: string): number => Math.round(dateOf(iso).getTime() / 86_400_000) + 25_569

interface ChartFrame {
  readonly chartsSheet: string
  readonly dataSheet: string
  readonly quantity: string
  readonly unit: string
  readonly judged: readonly RegisterRow[]
  readonly stages: readonly string[]
  readonly limits: readonly number[]
}

/** Sheets for the charts and their data, which refers to the register: one pair for each quantity that tests were judged by. */
export function writeCharts(workbook: Workbook, register: Register): ChartDescription[] {
  return framesOf(register).flatMap((frame) => chartsOf(workbook, register, frame))
}

function chartsOf(workbook: Workbook, register: Register, frame: ChartFrame): ChartDescription[] {
  const charts = workbook.addWorksheet(frame.chartsSheet, { views: [{ showGridLines: false }] })
  const data = workbook.addWorksheet(frame.dataSheet, { views: [{ showGridLines: false }] })
  charts.columns = Array.from({ length: 12 }, () => ({ width: 11 }))
  dress(charts.getCell('A1'), { font: fonts.title }).value = `${frame.quantity} of the tests`
  dress(charts.getCell('A2'), {
    font: fonts.muted,
  }).value = `Tests with a limit for ${frame.quantity}, ${frame.unit}. The chart over time shows every test; the distribution shows the tests included in totals.`
  setUpPage(charts, {
    landscape: false,
    title: titleOf(register),
    lastRow: 62,
    lastColumn: 12,
    onePage: true,
  })
  dress(data.getCell('A1'), { font: fonts.title }).value = 'Chart data'
  dress(data.getCell('A2'), { font: fonts.muted }).value =
    'Formulas on the register. #N/A keeps a point out of a chart: it belongs to another stage, or to another quantity.'
  const last = lastColumn(frame)
  data.columns = Array.from({ length: last }, () => ({ width: 13 }))
  const described = [overTime(data, register, frame), distribution(data, register, frame)]
  setUpPage(data, {
    landscape: true,
    title: titleOf(register),
    lastRow: data.rowCount,
    lastColumn: last,
    repeat: `${FIRST - 1}:${FIRST - 1}`,
  })
  return described
}

/** Columns of the data: dates and stages, the limits, then the classes. */
const classColumn = ({ stages, limits }: ChartFrame): number => stages.length + 3 + limits.length * 3 + 1
const lastColumn = (frame: ChartFrame): number => classColumn(frame) + 3

/** The quantity that most tests were judged by comes first, and has the plain names of the sheets. */
function framesOf({ rows }: Register): ChartFrame[] {
  const numbers = new Map<string, RegisterRow[]>()
  for (const row of rows)
    if (row.judged && row.role !== 'altered') {
      const key = `${row.judged.quantity}|${row.judged.unit}`
      numbers.set(key, [...(numbers.get(key) ?? []), row])
    }
  const found = [...numbers].sort(([, a], [, b]) => b.length - a.length)
  return found.map(([key, judged], i) => {
    const [quantity = '', unit = ''] = key.split('|')
    const suffix = i === 0 ? '' : ` ${i + 1}`
    return {
      chartsSheet: `${CHARTS_SHEET}${suffix}`,
      dataSheet: `${CHART_DATA_SHEET}${suffix}`,
      quantity,
      unit: unit.replace('m3', 'm³').replace('m2', 'm²'),
      judged,
      stages: [...new Set(rows.map(({ stage }) => stage ?? NOT_LOGGED))].sort(
        (a, b) => STAGE_ORDER.indexOf(a) - STAGE_ORDER.indexOf(b),
      ),
      limits: [...new Set(judged.map(({ judged: one }) => one?.limit ?? Number.NaN))].sort((a, b) => a - b),
    }
  })
}

const STAGE_ORDER = [...stages, NOT_LOGGED]

/** One series for each stage over the date of the test; one line for each limit. */
function overTime(sheet: Worksheet, { rows }: Register, frame: ChartFrame): ChartDescription {
  const { quantity, unit, stages, limits, dataSheet } = frame
  headingRow(sheet, FIRST - 1, 'Date', stages.length + 1)
  stages.forEach((stage, i) => {
    sheet.getCell(FIRST - 1, i + 2).value = stage
  })
  rows.forEach((test, index) => {
    const at = (key: string) => `${REGISTER_SHEET}!${cellOf(key, FIRST_ROW + index)}`
    dress(sheet.getCell(FIRST + index, 1), { numFmt: DATE_FORMAT }).value = {
      formula: at('date'),
      result: serial(test.date),
    }
    stages.forEach((stage, i) => {
      const value = valueAt(test, stage, quantity)
      dress(sheet.getCell(FIRST + index, i + 2), { numFmt: '0.00' }).value = {
        formula: `IF(AND(${at('stage')}="${stage}",${at('judged')}="${quantity}"),${at('value')},NA())`,
        result: value ?? { error: '#N/A' },
      }
    })
  })
  const last = FIRST + rows.length - 1
  const range = (column: number) => `${columnLetters(column)}${FIRST}:${columnLetters(column)}${last}`
  const dates = rows.map(({ date }) => serial(date))
  const from = Math.min(...dates) - 1
  const to = Math.max(...dates) + 1
  const points = stages.map((stage, i): ChartSeries => {
    const { marker } = printStyle(i)
    return {
      name: stage,
      xRef: { sheet: dataSheet, range: range(1) },
      xCache: dates,
      yRef: { sheet: dataSheet, range: range(i + 2) },
      yCache: rows.map((test) => valueAt(test, stage, quantity) ?? null),
      style: { marker },
    }
  })
  const lines = limits.map((limit, i) =>
    limitLine(sheet, stages.length + 3 + i * 3, limit, from, to, i, dataSheet),
  )
  return {
    sheetName: frame.chartsSheet,
    anchor: { fromCol: 0, fromRow: 3, toCol: 12, toRow: 31 },
    title: `${quantity} over time, by stage`,
    altText: `${quantity} of each test against its date, one mark for each stage, with the limit as a line`,
    kind: 'scatter',
    xAxis: { title: 'date of the test', min: from, max: to, numberFormat: 'd mmm yyyy' },
    yAxis: { title: `${quantity}, ${unit}`, min: 0, numberFormat: '0.0' },
    series: [...points, ...lines],
    legend: 'bottom',
  }
}

const valueAt = (test: RegisterRow, stage: string, quantity: string): number | undefined =>
  test.role !== 'altered' && (test.stage ?? NOT_LOGGED) === stage && test.judged?.quantity === quantity
    ? test.judged.value
    : undefined

function limitLine(
  sheet: Worksheet,
  column: number,
  limit: number,
  from: number,
  to: number,
  index: number,
  dataSheet: string,
): ChartSeries {
  const name = `limit ${limit}`
  dress(sheet.getCell(FIRST - 1, column), { font: fonts.bold }).value = name
  ;[from, to].forEach((day, i) => {
    dress(sheet.getCell(FIRST + i, column), { numFmt: DATE_FORMAT }).value = day
    dress(sheet.getCell(FIRST + i, column + 1), {}).value = limit
  })
  const range = (c: number) => `${columnLetters(c)}${FIRST}:${columnLetters(c)}${FIRST + 1}`
  const dashes = ['solid', 'dash', 'sysDot', 'dashDot'] as const
  return {
    name,
    xRef: { sheet: dataSheet, range: range(column) },
    xCache: [from, to],
    yRef: { sheet: dataSheet, range: range(column + 1) },
    yCache: [limit, limit],
    style: { line: { colour: '8B0000', width: 1.5, dash: dashes[index % dashes.length] ?? 'solid' } },
  }
}

/** How many counting tests fall into each class of the quantity. */
function distribution(sheet: Worksheet, { rows }: Register, frame: ChartFrame): ChartDescription {
  const { quantity, unit, judged, dataSheet } = frame
  const classes = classesOf(judged.map((row) => row.judged?.value ?? 0))
  const column = classColumn(frame)
  dress(sheet.getCell(FIRST - 1, column), { font: fonts.bold }).value = 'class'
  dress(sheet.getCell(FIRST - 1, column + 1), { font: fonts.bold }).value = 'from'
  dress(sheet.getCell(FIRST - 1, column + 2), { font: fonts.bold }).value = 'to'
  dress(sheet.getCell(FIRST - 1, column + 3), { font: fonts.bold }).value = 'tests'
  const of = (key: string) => columnRange(key, rows.length)
  const counts = classes.map(
    ({ from, to }) => judged.filter((row) => row.counts && inClass(row.judged?.value, from, to)).length,
  )
  classes.forEach(({ from, to, label }, i) => {
    const row = FIRST + i
    const [low, high] = [columnLetters(column + 1) + row, columnLetters(column + 2) + row]
    dress(sheet.getCell(row, column), {}).value = label
    dress(sheet.getCell(row, column + 1), {}).value = from
    dress(sheet.getCell(row, column + 2), {}).value = to
    dress(sheet.getCell(row, column + 3), {}).value = {
      formula: `SUMPRODUCT((${of('counts')}="yes")*(${of('judged')}="${quantity}")*(${of('value')}>${low})*(${of('value')}<=${high}))`,
      result: counts[i] ?? 0,
    }
  })
  const range = (c: number) => `${columnLetters(c)}${FIRST}:${columnLetters(c)}${FIRST + classes.length - 1}`
  return {
    sheetName: frame.chartsSheet,
    anchor: { fromCol: 0, fromRow: 33, toCol: 12, toRow: 61 },
    title: `Distribution of ${quantity}`,
    altText: `Number of tests in each class of ${quantity}`,
    kind: 'column',
    xAxis: { title: `${quantity}, ${unit}: above … up to` },
    yAxis: { title: 'tests', min: 0, numberFormat: '0' },
    series: [
      {
        name: 'tests included in totals',
        xRef: { sheet: dataSheet, range: range(column) },
        xCache: classes.map(({ label }) => label),
        yRef: { sheet: dataSheet, range: range(column + 3) },
        yCache: counts,
      },
    ],
    legend: 'none',
  }
}

const inClass = (value: number | undefined, from: number, to: number): boolean =>
  value !== undefined && value > from && value <= to
