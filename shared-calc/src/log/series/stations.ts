import { type Average, averageOf } from './average.js'
import { driftLimit, type Series, type Station, type StationOptions } from './series.js'
import { type Stretch, steadyStretches } from './steady.js'

/**
 * Flow below this share of the highest counts as none; device pressure is proportional to the square of the flow. Own
 * choice, no source.
 */
const NO_FLOW = { flow_m3_h: 0.02, devicePressure_Pa: 0.002 } as const
/** Noise of a gauge at rest, Pa. Own choice, no source. */
const DEVICE_AT_REST_PA = 1

/** Median time between samples, s. */
export function sampleStep(times: Float64Array): number {
  const steps = new Float64Array(Math.max(0, times.length - 1))
  for (let index = 0; index < steps.length; index++)
    steps[index] = (times[index + 1] as number) - (times[index] as number)
  return steps.sort()[Math.floor(steps.length / 2)] ?? 0
}

/**
 * The steady stations of a series in time order: readings averaged over the averaging time, zero-flow stretches as a
 * whole, and stretches rejected for drift or because they hold for half the averaging time only.
 */
export function findStations(series: Series, options: StationOptions): Station[] {
  const step = sampleStep(series.time_s)
  const atRest = restLimit(series)
  const wanted = Math.max(2, Math.round(options.averagingTime_s / step))
  return steadyStretches(series, step, wanted).flatMap((stretch) => {
    const mark = series.marks?.[stretch.first]
    const zero = mark === 2 || (mark !== 1 && isAtRest(series, stretch, atRest))
    return station(series, stretch, step, wanted, zero ? 'zero-flow' : 'reading', options) ?? []
  })
}

function station(
  series: Series,
  stretch: Stretch,
  step: number,
  wanted: number,
  kind: Station['kind'],
  options: StationOptions,
): Station | undefined {
  const length = stretch.last - stretch.first + 1
  if (length < wanted / 2) return undefined
  const averages = (window: Stretch): { pressure: Average; flow: Average } => ({
    pressure: averageOf(series.pressure_Pa, series.time_s, window.first, window.last),
    flow: averageOf(series.flow, series.time_s, window.first, window.last),
  })
  if (kind === 'zero-flow') return { kind, ...stretch, window: stretch, ...averages(stretch) }
  if (length < wanted) return { kind, ...stretch, window: stretch, ...averages(stretch), rejected: 'short' }
  const window = steadiest(series, stretch, wanted, Math.max(1, Math.round(1 / step)))
  const { pressure, flow } = averages(window)
  const drifts = Math.abs(pressure.drift) > driftLimit(pressure, options)
  return { kind, ...stretch, window, pressure, flow, ...(drifts ? { rejected: 'drift' as const } : {}) }
}

/** The window with the least drift of pressure and flow together, looked for in steps of 1 s; of equals, the earliest. */
function steadiest(series: Series, { first, last }: Stretch, wanted: number, hop: number): Stretch {
  let best = { first, last: first + wanted - 1 }
  let least = Number.POSITIVE_INFINITY
  for (let at = first; at + wanted - 1 <= last; at += hop) {
    const drift = relativeDrift(series.pressure_Pa, at, wanted) + relativeDrift(series.flow, at, wanted)
    if (drift < least - 1e-12) {
      least = drift
      best = { first: at, last: at + wanted - 1 }
    }
  }
  return best
}

/** Difference between the two halves of a window over their mean: a cheap drift for comparing windows. */
function relativeDrift(values: Float64Array, first: number, count: number): number {
  const half = count >> 1
  let early = 0
  let late = 0
  for (let index = 0; index < half; index++) {
    early += values[first + index] as number
    late += values[first + count - 1 - index] as number
  }
  return Math.abs(late - early) / (Math.abs(late + early) || 1)
}

function restLimit({ flow, flowKind }: Series): number {
  let highest = 0
  for (const value of flow) highest = Math.max(highest, Math.abs(value))
  return flowKind === 'flow_m3_h'
    ? NO_FLOW.flow_m3_h * highest
    : Math.max(DEVICE_AT_REST_PA, NO_FLOW.devicePressure_Pa * highest)
}

function isAtRest({ flow }: Series, { first, last }: Stretch, limit: number): boolean {
  let sum = 0
  for (let index = first; index <= last; index++) sum += flow[index] as number
  return Math.abs(sum / (last - first + 1)) <= limit
}
