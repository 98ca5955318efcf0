import { counted } from '@draughtbook/shared-calc'
import { type LogScale, logScale } from './log-scale.js'

export interface ChartPoint {
  /** Induced pressure difference, Pa, above 0. */
  pressure_Pa: number
  flow_m3_h: number
  /** What a reader of the point is told, as in `−50.2 Pa, 92.1 m³/h, 0.4 % above the curve`. */
  label: string
  /** Pointed out by a finding. */
  flagged?: boolean
}

export interface ChartRun {
  direction: 'depressurisation' | 'pressurisation'
  points: readonly ChartPoint[]
  /** Fitted curve with its 95 % band: pressure, flow, lower, upper; empty where nothing is fitted yet. */
  curve: readonly (readonly [pressure: number, flow: number, lower: number, upper: number])[]
  /** The curve rests on an assumed exponent. */
  provisional?: boolean
}

export interface ChartLimit {
  pressure_Pa: number
  flow_m3_h: number
  label: string
}

export interface ChartData {
  runs: readonly ChartRun[]
  limit?: ChartLimit
}

const ROOM = 1.25
const MARGIN = { top: 10, right: 12, bottom: 38, left: 46 }

/**
 * Flow against pressure on logarithmic axes, as SVG text without any style of its own (classes only), so that the
 * pane, print and tests share it and a strict style policy holds. Points can be reached by keyboard.
 */
export function leakageChart(data: ChartData, width_px: number, height_px: number): string {
  const points = data.runs.flatMap((run) => run.points)
  const pressures = [
    ...points.map((point) => point.pressure_Pa),
    ...curvePart(data, 0),
    ...(data.limit ? [data.limit.pressure_Pa] : []),
    10,
    50,
  ]
  const flows = [
    ...points.map((point) => point.flow_m3_h),
    ...curvePart(data, 1),
    // The limit's name has room above and below its mark.
    ...(data.limit ? [data.limit.flow_m3_h * ROOM, data.limit.flow_m3_h / ROOM] : []),
  ]
  if (flows.length === 0) return empty(width_px, height_px)
  const x = logScale(pressures, MARGIN.left, width_px - MARGIN.right, 22)
  const y = logScale(flows, height_px - MARGIN.bottom, MARGIN.top, 15)
  return [
    open(width_px, height_px, describe(data)),
    axes(x, y, width_px, height_px),
    `<line class="ref" x1="${px(x.at(50))}" x2="${px(x.at(50))}" y1="${MARGIN.top}" y2="${height_px - MARGIN.bottom}"/>`,
    ...data.runs.map((run) => runMarks(run, x, y)),
    data.limit ? limitMark(data.limit, x, y, isBelow(data.limit, data.runs)) : '',
    '</svg>',
  ].join('')
}

const curvePart = (data: ChartData, part: 0 | 1): number[] =>
  data.runs.flatMap((run) => run.curve.map((at) => at[part]))

function runMarks(run: ChartRun, x: LogScale, y: LogScale): string {
  const kind = `run ${run.direction}${run.provisional ? ' provisional' : ''}`
  const band = [
    ...run.curve.map(([p, , lower]) => [p, lower] as const),
    ...run.curve.toReversed().map(([p, , , upper]) => [p, upper] as const),
  ].filter(([, q]) => Number.isFinite(q) && q > 0)
  const within = (value: number): number => Math.min(Math.max(value, y.from), y.to)
  const line = run.curve.map(([p, q]) => `${px(x.at(p))},${px(y.at(q))}`).join(' ')
  return [
    `<g class="${kind}">`,
    run.provisional || band.length === 0
      ? ''
      : `<polygon class="band" points="${band.map(([p, q]) => `${px(x.at(p))},${px(y.at(within(q)))}`).join(' ')}"/>`,
    line ? `<polyline class="fit" points="${line}"/>` : '',
    ...run.points.map((point) => pointMark(point, run.direction, x, y)),
    '</g>',
  ].join('')
}

/** Filled discs for depressurisation, hollow squares for pressurisation: told apart without colour. */
function pointMark(point: ChartPoint, direction: ChartRun['direction'], x: LogScale, y: LogScale): string {
  const cx = x.at(point.pressure_Pa)
  const cy = y.at(point.flow_m3_h)
  const shape =
    direction === 'depressurisation'
      ? `<circle class="mark" cx="${px(cx)}" cy="${px(cy)}" r="4"/>`
      : `<rect class="mark" x="${px(cx - 3.5)}" y="${px(cy - 3.5)}" width="7" height="7"/>`
  const ring = point.flagged ? `<circle class="flag" cx="${px(cx)}" cy="${px(cy)}" r="8"/>` : ''
  const label = escapeXml(point.label)
  return `<g class="point" tabindex="0" role="img" aria-label="${label}" data-label="${label}">${ring}<circle class="hit" cx="${px(cx)}" cy="${px(cy)}" r="11"/>${shape}</g>`
}

/** Whether a limit lies below the curves at its pressure: the test exceeds it. */
const isBelow = ({ pressure_Pa, flow_m3_h }: ChartLimit, runs: readonly ChartRun[]): boolean =>
  runs.some(({ curve }) => {
    const away = ([pressure]: (typeof curve)[number]): number => Math.abs(Math.log(pressure / pressure_Pa))
    const [nearest] = curve.toSorted((a, b) => away(a) - away(b))
    return nearest !== undefined && nearest[1] > flow_m3_h
  })

/** Curves rise to the right: above them the name of a limit runs to the left, below them and near the left edge to the right. */
function limitMark(
  { pressure_Pa, flow_m3_h, label }: ChartLimit,
  x: LogScale,
  y: LogScale,
  below: boolean,
): string {
  const cx = x.at(pressure_Pa)
  const cy = y.at(flow_m3_h)
  const [at, anchor] =
    pressure_Pa < 30 || (below && pressure_Pa <= 50) ? [cx - 14, 'start'] : [cx + 14, 'end']
  return `<g class="limit"><line x1="${px(cx - 14)}" x2="${px(cx + 14)}" y1="${px(cy)}" y2="${px(cy)}"/><text x="${px(at)}" y="${px(below ? cy + 14 : cy - 6)}" text-anchor="${anchor}">${escapeXml(label)}</text></g>`
}

function axes(x: LogScale, y: LogScale, width_px: number, height_px: number): string {
  const bottom = height_px - MARGIN.bottom
  const right = width_px - MARGIN.right
  const vertical = x.ticks.map(({ value, labelled }) => {
    const at = px(x.at(value))
    const text = labelled
      ? `<text x="${at}" y="${bottom + 14}" text-anchor="middle">${tickText(value)}</text>`
      : ''
    return `<line class="grid" x1="${at}" x2="${at}" y1="${MARGIN.top}" y2="${bottom}"/>${text}`
  })
  const horizontal = y.ticks.map(({ value, labelled }) => {
    const at = y.at(value)
    const text = labelled
      ? `<text x="${MARGIN.left - 6}" y="${px(at + 4)}" text-anchor="end">${tickText(value)}</text>`
      : ''
    return `<line class="grid" x1="${MARGIN.left}" x2="${right}" y1="${px(at)}" y2="${px(at)}"/>${text}`
  })
  return [
    `<g class="axes" aria-hidden="true">`,
    ...vertical,
    ...horizontal,
    `<rect class="frame" x="${MARGIN.left}" y="${MARGIN.top}" width="${px(right - MARGIN.left)}" height="${px(bottom - MARGIN.top)}"/>`,
    `<text class="title" x="${px((MARGIN.left + right) / 2)}" y="${height_px - 4}" text-anchor="middle">Pressure difference, Pa</text>`,
    `<text class="title" transform="translate(11 ${px((MARGIN.top + bottom) / 2)}) rotate(-90)" text-anchor="middle">Air flow, m³/h</text>`,
    '</g>',
  ].join('')
}

function open(width_px: number, height_px: number, label: string): string {
  return `<svg class="leakage-chart" viewBox="0 0 ${width_px} ${height_px}" width="${width_px}" height="${height_px}" role="group" aria-label="${escapeXml(label)}" xmlns="http://www.w3.org/2000/svg">`
}

function empty(width_px: number, height_px: number): string {
  const text = 'No readings yet'
  return `${open(width_px, height_px, text)}<text class="title" x="${width_px / 2}" y="${height_px / 2}" text-anchor="middle">${text}</text></svg>`
}

function describe({ runs }: ChartData): string {
  const parts = runs.map(({ direction, points }) => `${direction} with ${counted(points.length, 'reading')}`)
  return `Air flow against pressure difference on logarithmic axes: ${parts.join(', ')}`
}

const px = (value: number): string => String(Number(value.toFixed(1)))

const tickText = (value: number): string => String(Number(value.toPrecision(2)))

const escapeXml = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('"', '&quot;')
