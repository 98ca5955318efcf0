import type { Workbook } from 'exceljs'
import type { AssessedTest } from '../../assessment/evaluate.js'
import type { WorkedRun } from '../../evaluation/work/worked-test.js'
import { rangeReference } from './address.js'
import type { ChartDescription, ChartSeries } from './chart/description.js'
import { printStyle } from './chart/print-style.js'
import { writeCurveMarks } from './curve-marks.js'
import type { Places } from './places.js'
import { type ChartRows, SUMMARY, SUMMARY_COLUMNS } from './summary-input.js'

/** The leakage curve on log axes: readings and fitted line of each direction. */
export function leakageChart(
  workbook: Workbook,
  test: AssessedTest,
  places: Places,
  rows: ChartRows,
): ChartDescription {
  const pressures = test.runs.flatMap(({ curve }) => [...curve.column('dp')])
  const flows = test.runs.flatMap(({ curve }) => [...curve.column('q_env'), ...curve.column('q_fit')])
  const atLimits = test.criteria.map(({ flow }) => flow.value('q_t'))
  const x = logLimits([...pressures, 50])
  const y = logLimits([...flows, ...atLimits.filter((flow) => near(flow, flows))])
  return {
    sheetName: SUMMARY,
    anchor: { fromCol: 0, fromRow: rows.from, toCol: SUMMARY_COLUMNS, toRow: rows.to },
    title: '',
    altText:
      'Leakage curve: air flow through the envelope against pressure difference, both axes logarithmic',
    kind: 'scatter',
    xAxis: { title: '\npressure difference, Pa', log: true, ...x, ownLabels: false },
    yAxis: {
      title: 'air flow through the envelope, m³/h\n',
      log: true,
      ...y,
      ownLabels: false,
    },
    series: [
      ...test.runs.flatMap((run, i) => seriesOf(run, i, places)),
      ...writeCurveMarks(workbook, test, places, x, y),
    ],
    legend: 'bottom',
  }
}

function seriesOf({ curve, direction }: WorkedRun, index: number, places: Places): ChartSeries[] {
  const range = (symbol: string) => {
    const first = places.symbol(curve.id, symbol)
    return { sheet: first.sheet, range: rangeReference(first, curve.rows, first.sheet).replaceAll('$', '') }
  }
  const { marker, line } = printStyle(index)
  const x = { xRef: range('dp'), xCache: [...curve.column('dp')] }
  return [
    {
      name: `${direction}, readings`,
      ...x,
      yRef: range('q_env'),
      yCache: [...curve.column('q_env')],
      ...(marker && { style: { marker } }),
    },
    {
      name: `${direction}, fitted line`,
      ...x,
      yRef: range('q_fit'),
      yCache: [...curve.column('q_fit')],
      ...(line && { style: { line } }),
    },
  ]
}

/** A limit is marked where it is within a decade of what was read: farther off it would flatten the curve. */
const near = (flow: number, flows: readonly number[]): boolean =>
  flow > Math.min(...flows) / 10 && flow < Math.max(...flows) * 10

/** Axis limits at 1, 2 or 5 times a power of ten, a little outside the values. */
export function logLimits(values: readonly number[]): { min: number; max: number } {
  const steps = (value: number) => {
    const decade = 10 ** Math.floor(Math.log10(value))
    return [1, 2, 5, 10].map((step) => step * decade)
  }
  const lowest = Math.min(...values)
  const highest = Math.max(...values)
  const min =
    steps(lowest)
      .filter((step) => step <= lowest)
      .at(-1) ?? lowest
  const max = steps(highest).find((step) => step >= highest) ?? highest
  return { min, max: Math.max(max, min * 10) }
}
