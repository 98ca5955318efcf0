import ExcelJS from 'exceljs'
import { addCharts } from '../../shared-calc/src/reports/workbook/chart/add-charts.js'
import type {
  ChartDescription,
  ChartSeries,
} from '../../shared-calc/src/reports/workbook/chart/description.js'
import { printStyle } from '../../shared-calc/src/reports/workbook/chart/print-style.js'

export const SHEET = `Owner's "log" & <notes>`

const PRESSURES = [12, 18, 25, 33, 42, 50, 58, 67]
const SCATTER = [1.012, 0.985, 1.006, 0.996, 1.011, 0.993, 0.998, 1.004]
const DIRECTIONS = [
  { word: 'depressurisation', coefficient: 61, exponent: 0.66 },
  { word: 'pressurisation', coefficient: 82, exponent: 0.61 },
]

/** An invented workbook: pressures in column A; for each direction flow, curve, lower and upper band in B to I. */
export async function inventedWorkbook(sheetName = SHEET): Promise<Uint8Array> {
  const workbook = new ExcelJS.Workbook()
  workbook.created = workbook.modified = new Date(Date.UTC(2025, 0, 1))
  const sheet = workbook.addWorksheet(sheetName, { pageSetup: { paperSize: 9, fitToPage: true } })
  sheet.getCell('A1').value = 'Invented readings, to try the chart with'
  for (const [column, values] of columns().entries()) {
    for (const [index, value] of values.entries()) sheet.getCell(index + 3, column + 1).value = value
  }
  workbook.addWorksheet('Other').getCell('A1').value = 1
  return new Uint8Array(await workbook.xlsx.writeBuffer())
}

/** Eight series: readings, fitted line and two band lines of either direction; the bands stay out of the legend. */
export function leakageChart(sheet = SHEET): ChartDescription {
  const values = columns()
  const series = DIRECTIONS.flatMap(({ word }, position) => {
    const { marker, line } = printStyle(position)
    const band = { ...line, width: 0.75, dash: 'sysDot' as const }
    const column = (name: string, offset: number, rest: Partial<ChartSeries>): ChartSeries => {
      const index = 1 + position * 4 + offset
      const letter = 'ABCDEFGHI'.charAt(index)
      return {
        name,
        xRef: { sheet, range: 'A3:A10' },
        yRef: { sheet, range: `${letter}3:${letter}10` },
        xCache: PRESSURES,
        yCache: values[index] ?? [],
        ...rest,
      }
    }
    return [
      column(`Readings, ${word}`, 0, { style: { marker } }),
      column(`Fitted line, ${word}`, 1, { style: { line } }),
      column(`Lower limit, ${word}`, 2, { style: { line: band }, inLegend: false }),
      column(`Upper limit, ${word}`, 3, { style: { line: band }, inLegend: false }),
    ]
  })
  return {
    sheetName: sheet,
    anchor: { fromCol: 1, fromRow: 11, toCol: 10, toRow: 36 },
    title: 'Air flow through the envelope (invented readings)',
    kind: 'scatter',
    xAxis: { title: 'Pressure difference, Pa', log: true, min: 10, max: 100, numberFormat: '0' },
    yAxis: { title: 'Air flow, m³/h', log: true, min: 100, max: 10_000, numberFormat: '#,##0' },
    series,
    legend: 'bottom',
  }
}

export async function chartedWorkbook(): Promise<Uint8Array> {
  return addCharts(await inventedWorkbook(), [leakageChart()])
}

function columns(): number[][] {
  const flows = DIRECTIONS.flatMap(({ coefficient, exponent }) => {
    const curve = PRESSURES.map((pressure) => coefficient * pressure ** exponent)
    const readings = curve.map((flow, index) => flow * (SCATTER[index] ?? 1))
    return [readings, curve, curve.map((flow) => flow * 0.95), curve.map((flow) => flow * 1.05)]
  })
  return [PRESSURES, ...flows]
}
