import { listed, plain } from '../../catalogue/words.js'
import type { PlannedDevice } from '../../contract/record/index.js'
import { type FlowSpan, flowSpans, servingRanges } from './coverage.js'
import type { DeviceInDirection, LimitedRange } from './devices.js'
import type { WorkedPlan } from './work-plan.js'

/** What a device can and cannot do in this building, in plain words, one sentence or two for each range. */
export function deviceInWords(
  worked: WorkedPlan,
  { name }: PlannedDevice,
  directions: readonly DeviceInDirection[],
): string[] {
  const [first] = directions
  if (!first || first.ranges.length === 0)
    return [
      `The range limits of "${name}" are not stated, so the plan cannot check whether it is powerful enough.`,
    ]
  const spans = flowSpans(worked, first.direction)
  const serving = servingRanges(first, spans)
  const pressures = [...(worked.pressures?.byDirection.get(first.direction)?.column('dp') ?? [])]
  const ranges = first.ranges.map((limited, row) => {
    const served = pressures.filter((_, i) => serving[i]?.includes(limited))
    return `${reach(limited, served, pressures, spans)} ${proves(first, row)}`.trim()
  })
  return [...ranges, ...whole(directions, worked)]
}

function reach(
  { range, lowest, highest }: LimitedRange,
  served: readonly number[],
  pressures: readonly number[],
  spans: readonly FlowSpan[],
): string {
  const head = `Range "${range.label}" (${plain(lowest.value, 0)} to ${plain(highest.value, 0)} m³/h)`
  if (spans.length === 0) return `${head}.`
  if (served.length === pressures.length)
    return `${head} covers every planned pressure if the building just meets the target.`
  if (served.length > 0) return `${head} covers only ${list(served, 'and')} Pa.`
  const least = Math.min(...spans.map((span) => span.least))
  const most = Math.max(...spans.map((span) => span.most))
  if (most < lowest.value)
    return `${head} is too large. A building that just meets the target leaks at most ${plain(most, 0)} m³/h at these pressures. Use a smaller device.`
  if (least > highest.value)
    return `${head} is too small. A building that just meets the target leaks at least ${plain(least, 0)} m³/h at these pressures.`
  return `${head} does not cover all expected flows at any of the pressures.`
}

function proves({ provable }: DeviceInDirection, row: number): string {
  if (!provable) return ''
  const least = provable.column('n_least')[row] as number
  const most = provable.column('n_most')[row] as number
  return least > most
    ? 'This range alone cannot cover all pressures of one run in this volume.'
    : `This range alone can measure an n50 of ${least.toFixed(2)} to ${most.toFixed(2)} 1/h in this volume. Below that, the flow at the lowest pressure is too small for this range.`
}

function whole(directions: readonly DeviceInDirection[], worked: WorkedPlan): string[] {
  const each = directions.flatMap((one) => {
    const serving = servingRanges(one, flowSpans(worked, one.direction))
    const set = worked.pressures?.byDirection.get(one.direction)?.column('dp') ?? []
    return serving.map((ranges, i) => ({ covered: ranges.length > 0, pressure: set[i] as number }))
  })
  const missed = each.filter(({ covered }) => !covered).map(({ pressure }) => pressure)
  if (flowSpans(worked, directions[0]?.direction ?? 'depressurisation').length === 0) return []
  if (missed.length === 0) return ['Its ranges together cover every planned pressure.']
  if (missed.length === each.length)
    return ['It covers none of the planned pressures if the building just meets the target.']
  return [`It does not cover ${list(missed, 'or')} Pa if the building just meets the target.`]
}

/** Pressures in whole Pa, each once. */
const list = (pressures: readonly number[], end: 'and' | 'or'): string =>
  listed([...new Set(pressures.map((pressure) => plain(pressure, 0)))], end)
