import type { ChartAxis, ChartDescription, ChartSeries } from './description.js'

/** Throws RangeError, naming the chart, for a description that no viewer could draw as meant. */
export function checkChart(chart: ChartDescription, sheetNames: readonly string[]): void {
  const fail = (message: string): never => {
    throw new RangeError(`chart ${JSON.stringify(chart.title)}: ${message}`)
  }
  const sheets = [chart.sheetName, ...chart.series.flatMap(({ xRef, yRef }) => [xRef.sheet, yRef.sheet])]
  const missing = sheets.find((name) => !sheetNames.includes(name))
  if (missing !== undefined) fail(`the workbook has no sheet ${JSON.stringify(missing)}`)
  if (chart.series.length === 0) fail('it has no series')
  const { fromCol, fromRow, toCol, toRow } = chart.anchor
  const whole = [fromCol, fromRow, toCol, toRow].every((n) => Number.isInteger(n) && n >= 0)
  if (!whole || toCol <= fromCol || toRow <= fromRow) fail('the anchor needs whole numbers, to beyond from')
  if (chart.yAxis.category) fail('a y axis has no categories')
  if (chart.kind === 'scatter' && chart.xAxis.category) fail('the x axis of a scatter has no categories')
  if (
    chart.kind !== 'scatter' &&
    (chart.xAxis.log || chart.xAxis.min !== undefined || chart.xAxis.max !== undefined)
  ) {
    fail('a category axis has neither a logarithmic scale nor limits')
  }
  for (const which of ['xAxis', 'yAxis'] as const) {
    const problem =
      axisProblem(chart[which]) ?? chart.series.map((s) => cacheProblem(chart[which], which, s)).find(Boolean)
    if (problem) fail(`${which}: ${problem}`)
  }
}

function axisProblem({ min, max, log }: ChartAxis): string | undefined {
  const limits = [min, max].filter((limit) => limit !== undefined)
  if (!limits.every(Number.isFinite)) return `the limits ${limits.join(' and ')} are not all finite`
  if (log && limits.some((limit) => limit <= 0)) return 'a logarithmic axis needs limits above 0'
  if (min !== undefined && max !== undefined && min >= max) return `min ${min} is not below max ${max}`
  return undefined
}

// Spreadsheet programs warn about such points each time the file is opened, and leave them out.
function cacheProblem(axis: ChartAxis, which: 'xAxis' | 'yAxis', series: ChartSeries): string | undefined {
  const cache = which === 'xAxis' ? series.xCache : series.yCache
  const bad = axis.log ? cache?.find((value) => typeof value === 'number' && value <= 0) : undefined
  return bad === undefined
    ? undefined
    : `${bad} of series ${JSON.stringify(series.name)} has no place on a logarithmic axis`
}
