import type { Series } from './series.js'

/** Half width of the comparison, s: the means of the 5 s before and after each moment are compared. */
export const COMPARE_S = 5
/** A change counts when it exceeds so many times the usual difference between neighbouring means. Own choice, no source. */
const CHANGE = 4
/** Changes below these are never steps: 1 Pa, and 2 % of the highest flow. Own choice, no source. */
const PRESSURE_FLOOR_PA = 1
const FLOW_FLOOR = 0.02
/** A small step between two stations shows over a longer comparison only: of the flow there, and so many times as long. Own choice, no source. */
const SMALL_STEP = 0.035
const LONGER = 3

export interface Stretch {
  first: number
  last: number
}

/**
 * Stretches of a series between steps of the fan: runs of samples over which neither the pressure's nor the flow's
 * mean of the next 5 s differs from that of the last 5 s by more than the noise. A break in time ends a stretch.
 * @param wanted - samples an average needs: only stretches shorter than that are given back what the comparison blurred
 */
export function steadyStretches(series: Series, step_s: number, wanted: number): Stretch[] {
  const reach = Math.max(1, Math.round(COMPARE_S / step_s))
  const pressure = contrast(series.pressure_Pa, reach)
  const flow = contrast(series.flow, reach)
  let highest = 0
  for (const value of series.flow) highest = Math.max(highest, Math.abs(value))
  const pressureLimit = Math.max(PRESSURE_FLOOR_PA, CHANGE * spread(pressure))
  const flowLimit = Math.max(FLOW_FLOOR * highest, CHANGE * spread(flow))
  const count = series.time_s.length
  const slow = contrast(series.flow, LONGER * reach)
  const slowLimit = CHANGE * spread(slow)
  const isStep = (index: number): boolean =>
    Math.abs(pressure[index] as number) > pressureLimit || Math.abs(flow[index] as number) > flowLimit
  // A large step fills the longer comparison around it too; taken for small steps, it would swallow a brief hold.
  const nearStep = within(isStep, count, LONGER * reach)
  const isSmallStep = (index: number): boolean =>
    nearStep[index] === 0 &&
    Math.abs(slow[index] as number) > Math.max(SMALL_STEP * Math.abs(series.flow[index] as number), slowLimit)
  const stretches: Stretch[] = []
  let first = -1
  for (let index = 0; index <= count; index++) {
    const steady = index < count && !isStep(index) && !isSmallStep(index) && series.marks?.[index] !== 3
    const follows = first >= 0 && sameBlock(series, index, step_s)
    if (steady && follows) continue
    if (first >= 0) stretches.push({ first, last: index - 1 })
    first = steady ? index : -1
  }
  return widened(stretches, Math.max(0, reach - 2 * Math.round(1 / step_s)), series, step_s, wanted)
}

/** Neighbouring samples belong together when no time is missing between them and the log marks them alike. */
function sameBlock({ time_s, marks, blocks }: Series, index: number, step_s: number): boolean {
  if (index >= time_s.length) return false
  const gap = (time_s[index] as number) - (time_s[index - 1] as number)
  return gap <= 5 * step_s && [marks, blocks].every((one) => one?.[index] === one?.[index - 1])
}

/** The comparison blurs a sharp step over 5 s on both sides; all but 2 s of that is given back where it is needed. */
function widened(
  stretches: Stretch[],
  by: number,
  series: Series,
  step_s: number,
  wanted: number,
): Stretch[] {
  return stretches.map(({ first, last }, index) => {
    const floor = (stretches[index - 1]?.last ?? -1) + 1
    const ceiling = (stretches[index + 1]?.first ?? series.time_s.length) - 1
    let from = first
    let to = last
    const short = () => to - from + 1 < wanted
    while (
      short() &&
      from > Math.max(floor, first - by) &&
      sameBlock(series, from, step_s) &&
      series.marks?.[from - 1] !== 3
    )
      from--
    while (short() && to < Math.min(ceiling, last + by) && sameBlock(series, to + 1, step_s)) to++
    return { first: from, last: to }
  })
}

/** 1 for every place with a step at most `reach` samples away, else 0. */
function within(isStep: (index: number) => boolean, count: number, reach: number): Uint8Array {
  const near = new Uint8Array(count)
  let filled = 0
  for (let index = 0; index < count; index++)
    if (isStep(index)) {
      const end = Math.min(count, index + reach + 1)
      near.fill(1, Math.max(filled, index - reach), end)
      filled = end
    }
  return near
}

/** Mean of the next `reach` samples minus mean of the last `reach`, by running sums: one pass. */
function contrast(values: Float64Array, reach: number): Float64Array {
  const sums = new Float64Array(values.length + 1)
  for (let index = 0; index < values.length; index++)
    sums[index + 1] = (sums[index] as number) + (values[index] as number)
  const result = new Float64Array(values.length)
  for (let index = 0; index < values.length; index++) {
    const before = Math.max(0, index - reach)
    const after = Math.min(values.length, index + reach)
    if (index === before || index === after) continue
    const later = ((sums[after] as number) - (sums[index] as number)) / (after - index)
    const earlier = ((sums[index] as number) - (sums[before] as number)) / (index - before)
    result[index] = later - earlier
  }
  return result
}

/** Median of the absolute differences, scaled to a standard deviation (factor 1.4826, normal distribution). */
function spread(values: Float64Array): number {
  const sorted = Float64Array.from(values, Math.abs).sort()
  return 1.4826 * (sorted[Math.floor(sorted.length / 2)] ?? 0)
}
