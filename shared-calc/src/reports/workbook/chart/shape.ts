import type { BarStyle, LineStyle, MarkerStyle, SeriesStyle } from './description.js'
import { element, valued } from './xml.js'

const EMU_PER_POINT = 12_700
const NO_LINE = '<a:ln><a:noFill/></a:ln>'
const OUTLINE_WIDTH = 1

/** `c:spPr` and, where the chart kind has one, `c:marker` of a series. Throws RangeError for a bad style. */
export function seriesShape(style: SeriesStyle): { shape: string; marker: string } {
  return {
    shape: style.bar ? barShape(style.bar) : element('c:spPr', {}, style.line ? stroke(style.line) : NO_LINE),
    marker: style.marker ? markerShape(style.marker) : element('c:marker', {}, valued('c:symbol', 'none')),
  }
}

/** `a:ln` of a line style. */
export function stroke({ colour, width, dash }: LineStyle): string {
  if (!(width > 0 && width <= 1584)) throw new RangeError(`a line width is 0 to 1584 points, not ${width}`)
  const w = Math.round(width * EMU_PER_POINT)
  return element('a:ln', { w, cap: 'flat' }, solid(colour), valued('a:prstDash', dash), '<a:round/>')
}

/** `a:solidFill` of an RRGGBB colour. */
export function solid(colour: string): string {
  return element('a:solidFill', {}, rgb(colour))
}

function markerShape({ shape, size, fill, outline }: MarkerStyle): string {
  if (!(Number.isInteger(size) && size >= 2 && size <= 72)) {
    throw new RangeError(`a marker size is a whole number of points from 2 to 72, not ${size}`)
  }
  const look = element('c:spPr', {}, solid(fill), outlined(outline))
  return element('c:marker', {}, valued('c:symbol', shape), valued('c:size', size), look)
}

function barShape({ fill, outline, pattern }: BarStyle): string {
  const inside = pattern
    ? element(
        'a:pattFill',
        { prst: pattern },
        element('a:fgClr', {}, rgb(outline)),
        element('a:bgClr', {}, rgb(fill)),
      )
    : solid(fill)
  return element('c:spPr', {}, inside, outlined(outline))
}

function outlined(colour: string): string {
  return stroke({ colour, width: OUTLINE_WIDTH, dash: 'solid' })
}

function rgb(colour: string): string {
  if (!/^[0-9A-Fa-f]{6}$/.test(colour))
    throw new RangeError(`a colour is RRGGBB, not ${JSON.stringify(colour)}`)
  return valued('a:srgbClr', colour.toUpperCase())
}
