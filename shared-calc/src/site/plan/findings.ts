import { finding } from '../../catalogue/findings/finding.js'
import type { Finding } from '../../contract/record/index.js'
import { bestDevice, flowSpans, servingRanges } from './coverage.js'
import type { PlanRequest } from './request.js'
import { weatherFindings } from './weather-findings.js'
import type { WorkedPlan } from './work-plan.js'

/** What prevents the test, or is assumed. */
export function planFindings(request: PlanRequest, worked: WorkedPlan): Finding[] {
  return [
    ...zeroFlow(request, worked),
    ...stations(worked),
    ...devices(request, worked),
    ...lapsing(request),
    ...weatherFindings(request, worked),
    ...missing(request, worked),
  ]
}

function zeroFlow({ plan }: PlanRequest, { method }: WorkedPlan): Finding[] {
  const { value: limit, source } = method.limits.zeroFlow_Pa
  const zero = plan.zeroFlowPressure_Pa
  const where = ['plan.zeroFlowPressure_Pa']
  if (zero === undefined) return [finding('assumed-zero-flow', { where, value: 0 })]
  if (Math.abs(zero) <= limit) return []
  return [finding('zero-flow-limit/plan', { where, source, value: zero, limit }, { zeroFlow: zero, limit })]
}

/** Stations of the method that the zero-flow pressure rules out. */
function stations({ method, pressures }: WorkedPlan): Finding[] {
  if (!pressures) return []
  const { source } = method.limits.lowestPressure_Pa
  const lowest = pressures.lowest.value('dp_min')
  return (pressures.stationsTooLow ?? []).map((station) =>
    finding(
      'lowest-pressure/station',
      { where: ['plan.zeroFlowPressure_Pa'], source, value: station, limit: lowest },
      { station, method: method.title, lowest },
    ),
  )
}

function devices({ plan }: PlanRequest, worked: WorkedPlan): Finding[] {
  if ((plan.devices ?? []).length === 0) return [finding('no-device', { where: ['plan.devices'] })]
  const unstated = (plan.devices ?? []).flatMap((device, i) => {
    const known = new Set(worked.devices.get(device)?.[0]?.ranges.map(({ range }) => range))
    const ranges = device.ranges ?? []
    if (ranges.length === 0) return [`plan.devices[${i}].ranges`]
    return ranges.flatMap((range, k) => (known.has(range) ? [] : [`plan.devices[${i}].ranges[${k}]`]))
  })
  const findings =
    unstated.length === 0 || !worked.pressures
      ? []
      : [finding('range-limits-not-stated', { where: unstated }, { count: unstated.length })]
  return [...findings, ...reach(worked)]
}

/** No device reaches every planned pressure. */
function reach(worked: WorkedPlan): Finding[] {
  if (worked.flows.size === 0) return []
  const where = ['plan.devices']
  const best = bestDevice(worked)
  if (!best) return [finding('device-reach/none', { where })]
  const missed = (worked.devices.get(best) ?? []).flatMap((one) => {
    const set = worked.pressures?.byDirection.get(one.direction)?.column('dp') ?? []
    return servingRanges(one, flowSpans(worked, one.direction)).flatMap((ranges, i) =>
      ranges.length > 0 ? [] : [set[i] as number],
    )
  })
  if (missed.length === 0) return []
  return [finding('device-reach/partly', { where }, { best: best.name, missed: [...new Set(missed)] })]
}

/** Equipment whose calibration runs out before the day. */
function lapsing({ plan }: PlanRequest): Finding[] {
  const { day } = plan
  const equipment = [
    ...(plan.devices ?? []).map((one, i) => ({ ...one, path: `plan.devices[${i}]` })),
    ...(plan.gauges ?? []).map((one, i) => ({ ...one, path: `plan.gauges[${i}]` })),
  ]
  const findings = equipment.flatMap(({ name, calibrationDue: due, path }): Finding[] => {
    const where = [`${path}.calibrationDue`]
    if (due === undefined) return [finding('calibration-lapses/not-known', { where }, { name })]
    if (day === undefined || due >= day) return []
    return [finding('calibration-lapses/before-test', { where }, { name, due, day })]
  })
  if (day !== undefined || equipment.length === 0) return findings
  return [...findings, finding('no-day', { where: ['plan.day'] })]
}

const missing = (request: PlanRequest, { target }: WorkedPlan): Finding[] => [
  ...(target ? [] : [finding('missing-target/plan', { where: ['target'] })]),
  ...(request.building.volume_m3 === undefined
    ? [finding('missing-basis/plan', { where: ['building.volume_m3'] })]
    : []),
]
