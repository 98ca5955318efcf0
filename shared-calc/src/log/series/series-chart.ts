import type { SeriesReading } from './read-series.js'
import type { Series, Station } from './series.js'

/** Width drawn in where none is asked for. */
const WIDTH = 720
const PANEL = 150
const LEFT = 56
const RIGHT = 12
const TOP = 22
const GAP = 16
/** Room above and below a curve. */
const MARGIN = 8
/** Room a station's label takes, by its letters. */
const LETTER = 7

/** What the stations look like; classes let a page choose its own colours. */
const LOOK = {
  reading: { label: 'reading', fill: '#1f6feb', opacity: 0.22 },
  'zero-flow': { label: 'zero flow', fill: '#6e7781', opacity: 0.22 },
  rejected: { label: 'rejected', fill: '#d1242f', opacity: 0.18 },
} as const

/**
 * A raw series as SVG text: pressure above, flow or device pressure below, over one time axis; the windows averaged, the
 * zero-flow stretches and the rejected stations are marked and named. Every sample counts: each pixel column shows the
 * least and the most of its samples. No script, no style, no outside reference.
 * @param width - in which it will be shown, in CSS pixels: letters keep their size; labels that would meet are left to the tooltip
 */
export function seriesChart({ series, stations }: SeriesReading, width = WIDTH): string {
  const start = series.time_s[0] ?? 0
  const end = series.time_s.at(-1) ?? 1
  const across = (time: number): number =>
    LEFT + ((time - start) / (end - start || 1)) * (width - LEFT - RIGHT)
  const flowName = series.flowKind === 'flow_m3_h' ? 'Flow, m³/h' : 'Device pressure, Pa'
  const height = TOP + 2 * PANEL + GAP + 34
  let labelled = Number.NEGATIVE_INFINITY
  const marks = stations
    .map((station) => {
      const label = labelOf(station)
      const half = (label.length * LETTER) / 2
      const middle = (at(series, station.window.first) + at(series, station.window.last)) / 2
      const room = across(middle) - half > labelled
      if (room) labelled = across(middle) + half
      return mark(series, station, room ? label : '', across)
    })
    .join('')
  const readings = stations.filter(({ kind, rejected }) => kind === 'reading' && !rejected).length
  const description = `${readings} readings averaged, ${stations.filter(({ kind }) => kind === 'zero-flow').length} zero-flow stretches, ${stations.filter(({ rejected }) => rejected).length} rejected`
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}" role="img" class="series-chart" font-family="sans-serif" font-size="11" fill="currentColor">`,
    `<title>Raw gauge series with its stations</title><desc>${description}</desc>`,
    marks,
    panel(series.time_s, series.pressure_Pa, 'Pressure difference, Pa', TOP, width, across),
    panel(series.time_s, series.flow, flowName, TOP + PANEL + GAP, width, across),
    timeAxis(start, end, TOP + 2 * PANEL + GAP, width, across),
    '</svg>',
  ].join('')
}

const at = ({ time_s }: Series, sample: number): number => time_s[sample] ?? 0

function labelOf({ kind, rejected, pressure }: Station): string {
  if (rejected) return '✕'
  return kind === 'zero-flow' ? '0' : pressure.mean.toFixed(0)
}

function mark(
  series: Series,
  { kind, window, rejected, pressure }: Station,
  label: string,
  across: (time: number) => number,
): string {
  const look = LOOK[rejected ? 'rejected' : kind]
  const x = across(at(series, window.first))
  const width = Math.max(1, across(at(series, window.last)) - x)
  const told = `${look.label}: ${pressure.mean.toFixed(1)} Pa from ${pressure.samples} samples${rejected ? ` (${rejected})` : ''}`
  const edge = rejected ? ` stroke="${look.fill}" stroke-dasharray="3 2"` : ''
  return [
    `<g class="station ${rejected ? 'rejected' : kind}"><title>${told}</title>`,
    `<rect x="${x.toFixed(1)}" y="${TOP}" width="${width.toFixed(1)}" height="${2 * PANEL + GAP}" fill="${look.fill}" fill-opacity="${look.opacity}"${edge}/>`,
    label
      ? `<text x="${(x + width / 2).toFixed(1)}" y="${TOP - 6}" text-anchor="middle">${label}</text>`
      : '',
    '</g>',
  ].join('')
}

function panel(
  times: Float64Array,
  values: Float64Array,
  name: string,
  top: number,
  width: number,
  across: (time: number) => number,
): string {
  const [least, most] = extremes(values)
  const span = most - least || 1
  const down = (value: number) => top + PANEL - MARGIN - ((value - least) / span) * (PANEL - 2 * MARGIN)
  const ticks = niceTicks(least, most)
    .map((tick) => {
      const y = down(tick).toFixed(1)
      return `<line x1="${LEFT}" x2="${width - RIGHT}" y1="${y}" y2="${y}" stroke="currentColor" stroke-opacity="0.15"/><text x="${LEFT - 5}" y="${y}" dy="0.32em" text-anchor="end">${tick}</text>`
    })
    .join('')
  return `<g>${ticks}<text transform="translate(12 ${top + PANEL / 2}) rotate(-90)" text-anchor="middle">${name}</text><path d="${trace(times, values, across, down)}" fill="none" stroke="currentColor" stroke-width="1"/></g>`
}

/** Down and up through the least and the most of each pixel column. */
function trace(
  times: Float64Array,
  values: Float64Array,
  across: (time: number) => number,
  down: (value: number) => number,
): string {
  const points: string[] = []
  let column = Number.NaN
  let low = 0
  let high = 0
  const flush = () => {
    if (Number.isNaN(column)) return
    points.push(`${column} ${down(low).toFixed(1)}`)
    if (high !== low) points.push(`${column} ${down(high).toFixed(1)}`)
  }
  for (let index = 0; index < values.length; index++) {
    const value = values[index] as number
    const at = Math.round(across(times[index] as number))
    if (at !== column) {
      flush()
      column = at
      low = value
      high = value
    } else {
      low = Math.min(low, value)
      high = Math.max(high, value)
    }
  }
  flush()
  return points.length > 0 ? `M${points.join('L')}` : ''
}

function timeAxis(
  start: number,
  end: number,
  bottom: number,
  width: number,
  across: (time: number) => number,
): string {
  const ticks = niceTicks(0, end - start, Math.max(3, Math.floor(width / 60)))
    .map((tick) => {
      const x = across(start + tick).toFixed(1)
      return `<line x1="${x}" x2="${x}" y1="${bottom}" y2="${bottom + 4}" stroke="currentColor"/><text x="${x}" y="${bottom + 16}" text-anchor="middle">${tick}</text>`
    })
    .join('')
  return `<g>${ticks}<text x="${width - RIGHT}" y="${bottom + 30}" text-anchor="end">s from the first sample</text></g>`
}

function extremes(values: Float64Array): [number, number] {
  let least = Number.POSITIVE_INFINITY
  let most = Number.NEGATIVE_INFINITY
  for (const value of values) {
    if (value < least) least = value
    if (value > most) most = value
  }
  return values.length > 0 ? [least, most] : [0, 1]
}

/** Round numbers within a span, at most one more than asked for. */
function niceTicks(least: number, most: number, wanted = 7): number[] {
  const raw = (most - least) / wanted || 1
  const power = 10 ** Math.floor(Math.log10(raw))
  const step = [1, 2, 5, 10].map((factor) => factor * power).find((one) => one >= raw) ?? raw
  const ticks: number[] = []
  for (let tick = Math.ceil(least / step) * step; tick <= most + step * 1e-9; tick += step)
    ticks.push(Number(tick.toPrecision(6)))
  return ticks
}
