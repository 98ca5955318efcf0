import type { BarStyle, ChartDescription, LineStyle, MarkerStyle, SeriesStyle } from './description.js'

const WHITE = 'FFFFFF'

// Our own colours: far apart in lightness as well as hue, all dark enough for thin lines on white paper. Markers
// are filled: LibreOffice draws no outline, so a hollow one would vanish there.
const STYLES: readonly { marker: MarkerStyle; line: LineStyle; bar: BarStyle }[] = [
  style('17508A', 'circle', 'solid'),
  style('B4530A', 'square', 'dash'),
  style('2B2B2B', 'triangle', 'sysDot'),
  style('6B7F1E', 'diamond', 'dashDot'),
  style('8C3B7A', 'x', 'lgDash'),
  style('0E7C7B', 'plus', 'lgDashDot'),
]
const PATTERNS = [undefined, 'wdUpDiag', 'pct20', 'wdDnDiag', 'smGrid'] as const

/**
 * Line, marker and bar style of the nth series (from 0), told apart by shape and dash as well as colour.
 * Use the marker for readings and the line of the same number for the curve fitted to them.
 */
export function printStyle(position: number): { marker: MarkerStyle; line: LineStyle; bar: BarStyle } {
  const found = STYLES[position % STYLES.length]
  if (!found) throw new RangeError(`a series position is a whole number from 0, not ${position}`)
  const pattern = PATTERNS[position % PATTERNS.length]
  return { ...found, bar: pattern ? { ...found.bar, fill: WHITE, pattern } : found.bar }
}

/** Style of a series that brings none: points in a scatter, points on a line, or bars. */
export function defaultStyle(kind: ChartDescription['kind'], position: number): SeriesStyle {
  const { marker, line, bar } = printStyle(position)
  if (kind === 'scatter') return { marker }
  return kind === 'line' ? { line, marker } : { bar }
}

function style(colour: string, shape: MarkerStyle['shape'], dash: LineStyle['dash']) {
  return {
    marker: { shape, size: 7, fill: colour, outline: colour },
    line: { colour, width: 1.75, dash },
    bar: { fill: colour, outline: colour },
  }
}
