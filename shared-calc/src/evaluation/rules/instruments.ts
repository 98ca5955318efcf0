import { finding } from '../../catalogue/findings/finding.js'
import type { DeviceRange, DeviceReading, Direction, Finding } from '../../contract/record/index.js'
import { exceeds, fallsBelow } from '../../engine/index.js'
import { type NamedRange, rangesOf } from '../work/device-flow.js'
import type { WorkedRun, WorkedTest } from '../work/worked-test.js'
import type { Rule } from './rule.js'

/** Gauge and device were in calibration on the day. */
export const calibrationExpired: Rule = ({ record }) =>
  (['pressureGauge', 'flowDevice'] as const).flatMap((field) => {
    const instrument = field === 'pressureGauge' ? 'pressure gauge' : 'flow device'
    const due = record[field]?.calibrationDue
    const test = record.test.date
    const where = [`${field}.calibrationDue`]
    if (due === undefined) return [finding('calibration-expired/not-logged', { where }, { instrument })]
    if (due >= test) return []
    return [finding('calibration-expired/expired', { where }, { instrument, due, test })]
  })

/** One reading of one device: where it is, in words and as a path. */
interface Place {
  readonly named: {
    readonly direction: Direction
    readonly reading: number
    readonly device?: number
  }
  readonly path: string
}

/** Every device pressure and flow lies inside the calibrated range that was used. */
export const deviceRange: Rule = ({ record, test }) => {
  const ranges = rangesOf(record.flowDevice)
  return test.runs.flatMap((worked) => {
    const run = record.runs[worked.index]
    return (run?.readings ?? []).flatMap((reading, i) => {
      const path = `runs[${worked.index}].readings[${i}]`
      const named = { direction: worked.direction, reading: i }
      if (!reading.devices) return rangeFindings(ranges, reading, measuredFlow(worked, i), { named, path })
      const flows = flowsOfDevices(test, worked, i)
      return reading.devices.flatMap((device, j) =>
        rangeFindings(ranges, device, flows?.[j] ?? Number.NaN, {
          named: { ...named, device: j },
          path: `${path}.devices[${j}]`,
        }),
      )
    })
  })
}

/** The flow of each of several devices that ran together for one reading. */
function flowsOfDevices(test: WorkedTest, { curve }: WorkedRun, i: number): readonly number[] | undefined {
  const flows = curve.input('q_m')
  const origin = flows && 'values' in flows ? flows.origin(i) : undefined
  return origin?.kind === 'block' ? test.calculation.get(origin.block).column('q_j') : undefined
}

function rangeFindings(
  ranges: ReadonlyMap<string, NamedRange>,
  reading: DeviceReading,
  flow: number,
  place: Place,
): Finding[] {
  const { named, path } = place
  if (reading.range !== undefined) {
    const range = ranges.get(reading.range)?.range
    if (range) return outsideRange(range, reading, flow, place)
    const where = [`${path}.range`]
    return [finding('device-range/unknown', { where }, { ...named, range: reading.range })]
  }
  const limited = [...ranges.values()].filter(({ range }) => hasFlowLimits(range))
  if (limited.length === 0 || limited.some(({ range }) => withinFlow(range, flow))) return []
  return [
    finding('device-range/none-fits', { where: [`${path}.flow_m3_h`], value: flow }, { ...named, flow }),
  ]
}

function outsideRange(
  range: DeviceRange,
  reading: DeviceReading,
  flow: number,
  { named, path }: Place,
): Finding[] {
  const findings: Finding[] = []
  const pressure = reading.devicePressure_Pa === undefined ? undefined : Math.abs(reading.devicePressure_Pa)
  const { minimumPressure_Pa: lowest = 0, maximumPressure_Pa: highest = Number.POSITIVE_INFINITY } = range
  if (pressure !== undefined && (fallsBelow(pressure, lowest) || exceeds(pressure, highest)))
    findings.push(
      finding(
        'device-range/pressure',
        {
          where: [`${path}.devicePressure_Pa`],
          value: pressure,
          limit: pressure < lowest ? lowest : highest,
        },
        { ...named, pressure, range: range.label, lowest, highest },
      ),
    )
  if (!withinFlow(range, flow)) {
    const { minimumFlow_m3_h: least = 0, maximumFlow_m3_h: most = Number.POSITIVE_INFINITY } = range
    const field = reading.flow_m3_h === undefined ? 'devicePressure_Pa' : 'flow_m3_h'
    findings.push(
      finding(
        'device-range/flow',
        { where: [`${path}.${field}`], value: flow, limit: flow < least ? least : most },
        { ...named, flow, range: range.label, lowest: least, highest: most },
      ),
    )
  }
  return findings
}

const hasFlowLimits = (range: DeviceRange): boolean =>
  range.minimumFlow_m3_h !== undefined || range.maximumFlow_m3_h !== undefined

const withinFlow = (range: DeviceRange, flow: number): boolean =>
  !fallsBelow(flow, range.minimumFlow_m3_h ?? 0) &&
  !exceeds(flow, range.maximumFlow_m3_h ?? Number.POSITIVE_INFINITY)

const measuredFlow = (run: WorkedRun, i: number): number => run.curve.column('q_m')[i] ?? Number.NaN

/** The device's calibrated ranges were not given, so nothing can be said about them. */
export const missingRanges: Rule = ({ record }) =>
  (record.flowDevice?.ranges ?? []).length > 0
    ? []
    : [finding('device-range/not-given', { where: ['flowDevice.ranges'] })]

/** Each reading is an average over long enough a time. */
export const averagingTime: Rule = ({ record, method }) => {
  const { value: limit, source } = method.limits.averagingTime_s
  return record.runs.flatMap(({ averagingTime_s: time, direction }, i) => {
    const facts = { where: [`runs[${i}].averagingTime_s`], source, value: time, limit }
    if (time === undefined) return [finding('averaging-time/not-logged', facts, { direction, limit })]
    return !fallsBelow(time, limit)
      ? []
      : [finding('averaging-time/short', facts, { direction, time, limit })]
  })
}
