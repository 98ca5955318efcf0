import { citing, practiceSource } from '../../catalogue/sources.js'
import { plain } from '../../catalogue/words.js'
import type { Finding } from '../../contract/record/index.js'
import { bestDevice, flowSpans, servingRanges } from './coverage.js'
import type { PlanRequest } from './request.js'
import { weatherFindings } from './weather-findings.js'
import type { WorkedPlan } from './work-plan.js'

/** What stands in the way of the test, or is assumed. */
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
  if (zero === undefined)
    return [
      {
        rule: 'assumed-zero-flow',
        severity: 'note',
        message: 'no zero-flow pressure is known yet: 0 Pa is assumed for the pressures to set',
        ...citing(practiceSource),
        value: 0,
        where: ['plan.zeroFlowPressure_Pa'],
        remedy: 'read it on site with the fan covered, and plan again',
      },
    ]
  if (Math.abs(zero) <= limit) return []
  return [
    {
      rule: 'zero-flow-limit',
      severity: 'invalidates',
      message: `the zero-flow pressure is ${plain(zero, 1)} Pa, beyond ${limit} Pa: no pressures are proposed`,
      ...citing(source),
      value: zero,
      limit,
      where: ['plan.zeroFlowPressure_Pa'],
      remedy: 'wait for less wind or a smaller temperature difference',
    },
  ]
}

/** Stations of the method that the zero-flow pressure rules out. */
function stations({ method, pressures }: WorkedPlan): Finding[] {
  const limit = pressures?.lowest.value('dp_min')
  return (pressures?.stationsTooLow ?? []).map((station) => ({
    rule: 'lowest-pressure',
    severity: 'caution',
    message: `the station at ${plain(station)} Pa of ${method.title} lies below the lowest pressure to use, ${plain(limit ?? 0, 1)} Pa: it is not proposed`,
    ...citing(method.limits.lowestPressure_Pa.source),
    value: station,
    ...(limit !== undefined && { limit }),
    where: ['plan.zeroFlowPressure_Pa'],
    remedy: 'wait for a smaller zero-flow pressure, or test by a method with more pressures',
  }))
}

function devices({ plan }: PlanRequest, worked: WorkedPlan): Finding[] {
  if ((plan.devices ?? []).length === 0)
    return [
      {
        rule: 'no-device',
        severity: 'note',
        message: 'no flow device was entered: whether one reaches cannot be said',
        ...citing(practiceSource),
        where: ['plan.devices'],
        remedy: 'enter the devices with the limits of their calibrated ranges',
      },
    ]
  const unstated = (plan.devices ?? []).flatMap((device, i) => {
    const known = new Set(worked.devices.get(device)?.[0]?.ranges.map(({ range }) => range))
    const ranges = device.ranges ?? []
    if (ranges.length === 0) return [`plan.devices[${i}].ranges`]
    return ranges.flatMap((range, k) => (known.has(range) ? [] : [`plan.devices[${i}].ranges[${k}]`]))
  })
  const findings: Finding[] =
    unstated.length === 0 || !worked.pressures
      ? []
      : [
          {
            rule: 'range-limits-not-stated',
            severity: 'caution',
            message: 'the limits of a range are not stated: it is left out of the plan',
            ...citing(practiceSource),
            where: unstated,
            remedy:
              'add lowest and highest flow, or coefficient, exponent and pressures, from the certificate',
          },
        ]
  return [...findings, ...reach(worked)]
}

/** No device reaches every planned pressure. */
function reach(worked: WorkedPlan): Finding[] {
  if (worked.flows.size === 0) return []
  const best = bestDevice(worked)
  const ones = best ? (worked.devices.get(best) ?? []) : []
  const missed = ones.flatMap((one) => {
    const set = worked.pressures?.byDirection.get(one.direction)?.column('dp') ?? []
    return servingRanges(one, flowSpans(worked, one.direction)).flatMap((ranges, i) =>
      ranges.length > 0 ? [] : [set[i] as number],
    )
  })
  if (best && missed.length === 0) return []
  return [
    {
      rule: 'device-reach',
      severity: 'caution',
      message: best
        ? `no device reaches every planned pressure if the building just meets the target; the best, "${best.name}", misses ${[...new Set(missed.map((pressure) => plain(pressure, 0)))].join(', ')} Pa`
        : 'no device serves any planned pressure if the building just meets the target',
      ...citing(practiceSource),
      where: ['plan.devices'],
      remedy: 'take a device whose range covers the flows to expect; a tight building needs a small one',
    },
  ]
}

/** Equipment whose calibration runs out before the day. */
function lapsing({ plan }: PlanRequest): Finding[] {
  const equipment = [
    ...(plan.devices ?? []).map((one, i) => ({ ...one, path: `plan.devices[${i}]` })),
    ...(plan.gauges ?? []).map((one, i) => ({ ...one, path: `plan.gauges[${i}]` })),
  ]
  const findings = equipment.flatMap(({ name, calibrationDue: due, path }): Finding[] => {
    const lapses = due !== undefined && plan.day !== undefined && due < plan.day
    if (due !== undefined && !lapses) return []
    return [
      {
        rule: 'calibration-lapses',
        severity: 'caution',
        message: lapses
          ? `the calibration of "${name}" lapses on ${due}, before the test on ${plan.day}`
          : `no calibration due date is known for "${name}"`,
        ...citing({ text: 'yearly in the UK, every second year in France', seen: 'read' }),
        where: [`${path}.calibrationDue`],
        remedy: 'have it calibrated before the day, or take another',
      },
    ]
  })
  if (plan.day !== undefined || equipment.length === 0) return findings
  return [
    ...findings,
    {
      rule: 'no-day',
      severity: 'note',
      message: 'the day of the test is not known: whether calibrations hold on the day cannot be said',
      ...citing(practiceSource),
      where: ['plan.day'],
      remedy: 'enter the day',
    },
  ]
}

function missing(request: PlanRequest, { target }: WorkedPlan): Finding[] {
  const findings: Finding[] = []
  if (!target)
    findings.push({
      rule: 'missing-target',
      severity: 'note',
      message: 'no target was set: no flows to expect can be given',
      ...citing(practiceSource),
      where: ['target'],
      remedy: 'set the target that the project must meet',
    })
  if (request.building.volume_m3 === undefined)
    findings.push({
      rule: 'missing-basis',
      severity: 'note',
      message: 'the internal volume is not known: the smallest n50 each range can prove is not given',
      ...citing(practiceSource),
      where: ['building.volume_m3'],
      remedy: 'take off the volume',
    })
  return findings
}
