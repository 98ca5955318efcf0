import type { InsertedChart } from '../host.js'

/** Draws the flow against pressure chart on logarithmic axes from cells of the workbook. */
export async function addChart(context: Excel.RequestContext, wanted: InsertedChart): Promise<void> {
  const { worksheets } = context.workbook
  const sheet = worksheets.getItem(wanted.sheet)
  const [first] = wanted.series
  if (!first) return
  const chart = sheet.charts.add('XYScatter', worksheets.getItem(first.sheet).getRange(first.y), 'Columns')
  chart.title.text = wanted.title
  chart.setPosition(wanted.anchor)
  chart.series.load('items/name')
  await context.sync()
  // Excel guesses series from the cells it was given; ours are named one by one.
  for (const guessed of chart.series.items) guessed.delete()
  for (const { name, sheet: source, x, y, kind } of wanted.series) {
    const series = chart.series.add(name)
    series.setXAxisValues(worksheets.getItem(source).getRange(x))
    series.setValues(worksheets.getItem(source).getRange(y))
    series.chartType = kind === 'line' ? 'XYScatterLinesNoMarkers' : 'XYScatter'
  }
  const { valueAxis, categoryAxis } = chart.axes
  valueAxis.scaleType = 'Logarithmic'
  categoryAxis.scaleType = 'Logarithmic'
  valueAxis.title.text = wanted.yTitle
  categoryAxis.title.text = wanted.xTitle
  await context.sync()
}
