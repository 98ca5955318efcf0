import type { Direction, PlannedDevice } from '../../contract/record/index.js'
import type { DeviceInDirection, LimitedRange } from './devices.js'
import type { WorkedPlan } from './work-plan.js'

/** Lowest and highest flow to expect at one planned pressure, m³/h at the device, over the exponents. */
export interface FlowSpan {
  readonly least: number
  readonly most: number
}

/** The flows to expect at each planned pressure of a direction, in the order of the pressures. */
export function flowSpans({ flows, pressures }: WorkedPlan, direction: Direction): FlowSpan[] {
  const blocks = flows.get(direction) ?? []
  const rows = pressures?.byDirection.get(direction)?.rows ?? 0
  if (blocks.length === 0) return []
  return Array.from({ length: rows }, (_, row) => {
    const values = blocks.map((block) => block.column('q_m')[row] as number)
    return { least: Math.min(...values), most: Math.max(...values) }
  })
}

export const serves = ({ lowest, highest }: LimitedRange, { least, most }: FlowSpan): boolean =>
  lowest.value <= least && most <= highest.value

/** For each planned pressure, the ranges of the device that serve whatever the exponent turns out to be. */
export function servingRanges(device: DeviceInDirection, spans: readonly FlowSpan[]): LimitedRange[][] {
  return spans.map((span) => device.ranges.filter((range) => serves(range, span)))
}

/** The device that serves most of the planned pressures in every direction; undefined where none serves any. */
export function bestDevice(worked: WorkedPlan): PlannedDevice | undefined {
  const served = [...worked.devices].map(([device, directions]) => ({
    device,
    count: Math.min(
      ...directions.map(
        (one) =>
          servingRanges(one, flowSpans(worked, one.direction)).filter((ranges) => ranges.length > 0).length,
      ),
    ),
  }))
  const [best] = served.sort((a, b) => b.count - a.count)
  return best && best.count > 0 ? best.device : undefined
}
