import type { ChartAxis, ChartDescription } from './description.js'
import { stroke } from './shape.js'
import { labelText, title } from './text.js'
import { element, valued } from './xml.js'

export const AXIS_IDS = { x: 10, y: 20 } // any two numbers, unique within one chart part

const GRID = { major: 'BFBFBF', minor: 'DEDEDE', axis: '595959' }

/** Both axes of a chart; child order as CT_ValAx, CT_CatAx and CT_DateAx ask. */
export function axes(chart: ChartDescription): string {
  const { kind, xAxis, yAxis } = chart
  const between = valued('c:crossBetween', kind === 'column' ? 'between' : 'midCat')
  const y = element('c:valAx', {}, ...shared('y', yAxis, true), crossing(xAxis), between)
  if (kind === 'scatter')
    return element('c:valAx', {}, ...shared('x', xAxis, true), crossing(yAxis), between) + y
  const head = [...shared('x', xAxis, false), crossing(yAxis, kind)]
  if (xAxis.category === 'date') {
    return element('c:dateAx', {}, ...head, valued('c:auto', 0), valued('c:lblOffset', 100)) + y
  }
  const labels = [valued('c:auto', 0), valued('c:lblAlgn', 'ctr'), valued('c:lblOffset', 100)]
  return element('c:catAx', {}, ...head, ...labels, valued('c:noMultiLvlLbl', 1)) + y
}

function shared(which: 'x' | 'y', axis: ChartAxis, gridlines: boolean): string[] {
  return [
    valued('c:axId', AXIS_IDS[which]),
    scaling(axis),
    valued('c:delete', 0),
    valued('c:axPos', which === 'x' ? 'b' : 'l'),
    gridlines ? lines('c:majorGridlines', GRID.major) : '',
    gridlines && axis.log ? lines('c:minorGridlines', GRID.minor) : '',
    title(axis.title, 'axis', which === 'y'),
    element('c:numFmt', { formatCode: axis.numberFormat ?? 'General', sourceLinked: 0 }),
    valued('c:majorTickMark', 'out'),
    valued('c:minorTickMark', axis.log ? 'out' : 'none'),
    valued('c:tickLblPos', axis.ownLabels === false ? 'none' : 'low'),
    element('c:spPr', {}, stroke({ colour: GRID.axis, width: 0.75, dash: 'solid' })),
    labelText(),
    valued('c:crossAx', AXIS_IDS[which === 'x' ? 'y' : 'x']),
  ]
}

function scaling({ log, min, max }: ChartAxis): string {
  return element(
    'c:scaling',
    {},
    log ? valued('c:logBase', 10) : '',
    valued('c:orientation', 'minMax'),
    max === undefined ? '' : valued('c:max', max),
    min === undefined ? '' : valued('c:min', min),
  )
}

/** Where an axis meets the other one: at that one's minimum; bars alone must be on zero where they can. */
function crossing(other: ChartAxis, kind?: ChartDescription['kind']): string {
  return valued('c:crosses', kind === 'column' && !other.log ? 'autoZero' : 'min')
}

function lines(name: string, colour: string): string {
  return element(name, {}, element('c:spPr', {}, stroke({ colour, width: 0.5, dash: 'solid' })))
}
