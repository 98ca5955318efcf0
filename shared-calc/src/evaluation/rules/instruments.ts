import { finding } from '../../catalogue/findings/finding.js'
import type { DeviceRange, DeviceReading, Finding } from '../../contract/record/index.js'
import { exceeds, fallsBelow } from '../../engine/index.js'
import { type NamedRange, rangesOf } from '../work/device-flow.js'
import type { WorkedRun, WorkedTest } from '../work/worked-test.js'
import { inEach, type Rule, silent } from './rule.js'

const calibrated = [
  { field: 'pressureGauge', instrument: 'pressure gauge' },
  { field: 'flowDevice', instrument: 'flow device' },
] as const

/** Gauge and device were in calibration on the day. */
export const calibrationExpired: Rule = ({ record }) =>
  inEach(calibrated, ({ field, instrument }) => {
    const due = record[field]?.calibrationDue
    const test = record.test.date
    if (due !== undefined && due >= test) return silent
    const where = [`${field}.calibrationDue`]
    if (due === undefined) return [finding('calibration-expired/not-logged', { where }, { instrument })]
    return [finding('calibration-expired/expired', { where }, { instrument, due, test })]
  })

/** One reading of one device: where it is. */
interface Place {
  readonly run: WorkedRun
  readonly reading: number
  readonly device?: number
}

const pathOf = ({ run, reading, device }: Place): string =>
  `runs[${run.index}].readings[${reading}]${device === undefined ? '' : `.devices[${device}]`}`

const named = ({ run, reading, device }: Place) => ({
  direction: run.direction,
  reading,
  ...(device !== undefined && { device }),
})

/** The calibrated ranges of a device: all by label, and those with limits of the flow. */
interface Ranges {
  readonly byLabel: ReadonlyMap<string, NamedRange>
  readonly limited: readonly DeviceRange[]
}

/** Every device pressure and flow lies inside the calibrated range that was used. */
export const deviceRange: Rule = ({ record, test }) => {
  const ranges = {
    byLabel: rangesOf(record.flowDevice),
    limited: (record.flowDevice?.ranges ?? []).filter(hasFlowLimits),
  }
  return inEach(test.runs, (run) => {
    const flows = run.curve.column('q_m')
    return inEach(record.runs[run.index]?.readings ?? [], (reading, i) => {
      if (!reading.devices) return rangeFindings(ranges, reading, flows[i] ?? Number.NaN, { run, reading: i })
      const each = flowsOfDevices(test, run, i)
      return inEach(reading.devices, (device, j) =>
        rangeFindings(ranges, device, each?.[j] ?? Number.NaN, { run, reading: i, device: j }),
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
  { byLabel, limited }: Ranges,
  reading: DeviceReading,
  flow: number,
  place: Place,
): readonly Finding[] {
  if (reading.range !== undefined) {
    const range = byLabel.get(reading.range)?.range
    if (range) return outsideRange(range, reading, flow, place)
    const where = [`${pathOf(place)}.range`]
    return [finding('device-range/unknown', { where }, { ...named(place), range: reading.range })]
  }
  if (limited.length === 0 || limited.some((range) => withinFlow(range, flow))) return silent
  const where = [`${pathOf(place)}.flow_m3_h`]
  return [finding('device-range/none-fits', { where, value: flow }, { ...named(place), flow })]
}

function outsideRange(
  range: DeviceRange,
  reading: DeviceReading,
  flow: number,
  place: Place,
): readonly Finding[] {
  const findings: Finding[] = []
  const pressure = reading.devicePressure_Pa === undefined ? undefined : Math.abs(reading.devicePressure_Pa)
  const { minimumPressure_Pa: lowest = 0, maximumPressure_Pa: highest = Number.POSITIVE_INFINITY } = range
  if (pressure !== undefined && (fallsBelow(pressure, lowest) || exceeds(pressure, highest)))
    findings.push(
      finding(
        'device-range/pressure',
        {
          where: [`${pathOf(place)}.devicePressure_Pa`],
          value: pressure,
          limit: pressure < lowest ? lowest : highest,
        },
        { ...named(place), pressure, range: range.label, lowest, highest },
      ),
    )
  if (!withinFlow(range, flow)) {
    const { minimumFlow_m3_h: least = 0, maximumFlow_m3_h: most = Number.POSITIVE_INFINITY } = range
    const field = reading.flow_m3_h === undefined ? 'devicePressure_Pa' : 'flow_m3_h'
    findings.push(
      finding(
        'device-range/flow',
        { where: [`${pathOf(place)}.${field}`], value: flow, limit: flow < least ? least : most },
        { ...named(place), flow, range: range.label, lowest: least, highest: most },
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

/** The device's calibrated ranges were not given, so nothing can be said about them. */
export const missingRanges: Rule = ({ record }) =>
  (record.flowDevice?.ranges ?? []).length > 0
    ? silent
    : [finding('device-range/not-given', { where: ['flowDevice.ranges'] })]

/** Each reading is an average over long enough a time. */
export const averagingTime: Rule = ({ record, method }) => {
  const { value: limit, source } = method.limits.averagingTime_s
  return inEach(record.runs, ({ averagingTime_s: time, direction }, i) => {
    if (time !== undefined && !fallsBelow(time, limit)) return silent
    const facts = { where: [`runs[${i}].averagingTime_s`], source, value: time, limit }
    return time === undefined
      ? [finding('averaging-time/not-logged', facts, { direction, limit })]
      : [finding('averaging-time/short', facts, { direction, time, limit })]
  })
}
