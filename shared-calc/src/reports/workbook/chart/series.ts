import { dataSource } from './data.js'
import type { ChartDescription, ChartSeries } from './description.js'
import { defaultStyle } from './print-style.js'
import { seriesShape } from './shape.js'
import { richLabel } from './text.js'
import { element, escapeXml, valued } from './xml.js'

/** `c:ser` of the series at a position; child order as CT_ScatterSer, CT_LineSer and CT_BarSer ask. */
export function seriesElement(chart: ChartDescription, series: ChartSeries, position: number): string {
  const { shape, marker } = seriesShape(series.style ?? defaultStyle(chart.kind, position))
  const name = element('c:tx', {}, `<c:v>${escapeXml(series.name)}</c:v>`)
  const head = [valued('c:idx', position), valued('c:order', position), name, shape]
  const smooth = valued('c:smooth', 0)
  const { xRef, yRef, xCache, yCache } = series
  if (chart.kind === 'scatter') {
    const x = dataSource('c:xVal', 'number', xRef, xCache)
    return element(
      'c:ser',
      {},
      ...head,
      marker,
      pointLabels(series),
      x,
      dataSource('c:yVal', 'number', yRef, yCache),
      smooth,
    )
  }
  const type = (chart.xAxis.category ?? 'text') === 'text' ? 'text' : 'number'
  const data = [dataSource('c:cat', type, xRef, xCache), dataSource('c:val', 'number', yRef, yCache)]
  return chart.kind === 'line'
    ? element('c:ser', {}, ...head, marker, ...data, smooth)
    : element('c:ser', {}, ...head, valued('c:invertIfNegative', 0), ...data)
}

/** `c:dLbls`: one text a point, nothing else (ECMA-376 Part 1, 21.2.2.49). */
function pointLabels({ labels }: ChartSeries): string {
  if (!labels) return ''
  const shown = (texts: boolean) => [
    valued('c:showLegendKey', 0),
    valued('c:showVal', texts ? 1 : 0),
    valued('c:showCatName', 0),
    valued('c:showSerName', 0),
    valued('c:showPercent', 0),
    valued('c:showBubbleSize', 0),
  ]
  const each = labels.texts.map((text, index) =>
    element(
      'c:dLbl',
      {},
      valued('c:idx', index),
      element('c:tx', {}, richLabel(text)),
      valued('c:dLblPos', labels.position),
      ...shown(true),
    ),
  )
  return element('c:dLbls', {}, ...each, ...shown(false))
}
