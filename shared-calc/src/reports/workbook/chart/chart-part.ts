import { AXIS_IDS, axes } from './axis.js'
import type { ChartDescription } from './description.js'
import { seriesElement } from './series.js'
import { solid, stroke } from './shape.js'
import { labelText, title } from './text.js'
import { element, NAMESPACES, valued, XML_HEAD } from './xml.js'

const LEGEND_POSITIONS = { bottom: 'b', top: 't', left: 'l', right: 'r' }

/** The chart part (ECMA-376 Part 1, 21.2). Throws RangeError where the description cannot be drawn. */
export function chartPart(chart: ChartDescription): string {
  const plotArea = element('c:plotArea', {}, '<c:layout/>', plot(chart), axes(chart))
  const body = element(
    'c:chart',
    {},
    title(chart.title, 'chart'),
    valued('c:autoTitleDeleted', chart.title === '' ? 1 : 0),
    plotArea,
    legend(chart),
    valued('c:plotVisOnly', 0), // hiding the helper rows must not empty the chart
    valued('c:dispBlanksAs', 'gap'),
  )
  const frame = stroke({ colour: 'D9D9D9', width: 0.75, dash: 'solid' })
  return (
    XML_HEAD +
    element(
      'c:chartSpace',
      { 'xmlns:c': NAMESPACES.chart, 'xmlns:a': NAMESPACES.drawing, 'xmlns:r': NAMESPACES.relationships },
      valued('c:roundedCorners', 0),
      body,
      element('c:spPr', {}, solid('FFFFFF'), frame),
      labelText(),
    )
  )
}

function plot(chart: ChartDescription): string {
  const series = chart.series.map((one, position) => seriesElement(chart, one, position))
  const ids = [valued('c:axId', AXIS_IDS.x), valued('c:axId', AXIS_IDS.y)]
  const plain = valued('c:varyColors', 0)
  if (chart.kind === 'scatter') {
    return element('c:scatterChart', {}, valued('c:scatterStyle', 'lineMarker'), plain, ...series, ...ids)
  }
  if (chart.kind === 'line') {
    const grouping = valued('c:grouping', 'standard')
    return element('c:lineChart', {}, grouping, plain, ...series, valued('c:marker', 1), ...ids)
  }
  const grouping = [valued('c:barDir', 'col'), valued('c:grouping', 'clustered')]
  return element('c:barChart', {}, ...grouping, plain, ...series, valued('c:gapWidth', 40), ...ids)
}

function legend(chart: ChartDescription): string {
  if (chart.legend === 'none') return ''
  const removed = chart.series.map((series, position) =>
    series.inLegend === false
      ? element('c:legendEntry', {}, valued('c:idx', position), valued('c:delete', 1))
      : '',
  )
  const position = valued('c:legendPos', LEGEND_POSITIONS[chart.legend])
  return element('c:legend', {}, position, ...removed, valued('c:overlay', 0), labelText())
}
