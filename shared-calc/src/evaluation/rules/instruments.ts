import { citing, practiceSource } from '../../catalogue/sources.js'
import { plain, readingName } from '../../catalogue/words.js'
import type { DeviceRange, DeviceReading, Finding } from '../../contract/record/index.js'
import { type NamedRange, rangesOf } from '../work/device-flow.js'
import type { WorkedRun, WorkedTest } from '../work/worked-test.js'
import type { Rule } from './rule.js'

const calibration = { text: 'yearly in the UK, every second year in France', seen: 'read' } as const

/** Gauge and device were in calibration on the day. */
export const calibrationExpired: Rule = ({ record }) =>
  (['pressureGauge', 'flowDevice'] as const).flatMap((field) => {
    const term = field === 'pressureGauge' ? 'pressure gauge' : 'flow device'
    const due = record[field]?.calibrationDue
    if (due !== undefined && due >= record.test.date) return []
    return [
      {
        rule: 'calibration-expired',
        severity: 'caution',
        message:
          due === undefined
            ? `calibration due date of the ${term} was not logged`
            : `calibration of the ${term} ran out on ${due}, before the test on ${record.test.date}`,
        ...citing(calibration),
        where: [`${field}.calibrationDue`],
        remedy: 'have the instrument calibrated; ask the certifying body whether the test stands',
      } satisfies Finding,
    ]
  })

/** Every device pressure and flow lies inside the calibrated range that was used. */
export const deviceRange: Rule = ({ record, test }) => {
  const ranges = rangesOf(record.flowDevice)
  return test.runs.flatMap((worked) => {
    const run = record.runs[worked.index]
    return (run?.readings ?? []).flatMap((reading, i) => {
      const path = `runs[${worked.index}].readings[${i}]`
      const name = readingName(worked.direction, i)
      if (!reading.devices) return rangeFindings(ranges, reading, measuredFlow(worked, i), name, path)
      const flows = flowsOfDevices(test, worked, i)
      return reading.devices.flatMap((device, j) =>
        rangeFindings(
          ranges,
          device,
          flows?.[j] ?? Number.NaN,
          `${name}, device ${j + 1}`,
          `${path}.devices[${j}]`,
        ),
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
  name: string,
  path: string,
): Finding[] {
  if (reading.range !== undefined) {
    const named = ranges.get(reading.range)
    if (!named) return [unknownRange(reading.range, name, path)]
    return outsideRange(named.range, reading, flow, name, path)
  }
  const limited = [...ranges.values()].filter(({ range }) => hasFlowLimits(range))
  if (limited.length === 0 || limited.some(({ range }) => withinFlow(range, flow))) return []
  return [
    outside(
      `${name}: air flow ${plain(flow, 1)} m³/h lies in no calibrated range of the device`,
      `${path}.flow_m3_h`,
      flow,
    ),
  ]
}

function outsideRange(
  range: DeviceRange,
  reading: DeviceReading,
  flow: number,
  name: string,
  path: string,
): Finding[] {
  const findings: Finding[] = []
  const pressure = reading.devicePressure_Pa === undefined ? undefined : Math.abs(reading.devicePressure_Pa)
  const { minimumPressure_Pa: lowest = 0, maximumPressure_Pa: highest = Number.POSITIVE_INFINITY } = range
  if (pressure !== undefined && (pressure < lowest || pressure > highest))
    findings.push(
      outside(
        `${name}: device pressure ${plain(pressure, 1)} Pa lies outside the calibrated range "${range.label}" (${limitsText(lowest, highest)} Pa)`,
        `${path}.devicePressure_Pa`,
        pressure,
        pressure < lowest ? lowest : highest,
      ),
    )
  if (!withinFlow(range, flow)) {
    const { minimumFlow_m3_h: least = 0, maximumFlow_m3_h: most = Number.POSITIVE_INFINITY } = range
    findings.push(
      outside(
        `${name}: air flow ${plain(flow, 1)} m³/h lies outside the calibrated range "${range.label}" (${limitsText(least, most)} m³/h)`,
        reading.flow_m3_h === undefined ? `${path}.devicePressure_Pa` : `${path}.flow_m3_h`,
        flow,
        flow < least ? least : most,
      ),
    )
  }
  return findings
}

const limitsText = (lowest: number, highest: number): string =>
  Number.isFinite(highest) ? `${plain(lowest)} to ${plain(highest)}` : `from ${plain(lowest)}`

const hasFlowLimits = (range: DeviceRange): boolean =>
  range.minimumFlow_m3_h !== undefined || range.maximumFlow_m3_h !== undefined

const withinFlow = (range: DeviceRange, flow: number): boolean =>
  flow >= (range.minimumFlow_m3_h ?? 0) && flow <= (range.maximumFlow_m3_h ?? Number.POSITIVE_INFINITY)

const measuredFlow = (run: WorkedRun, i: number): number => run.curve.column('q_m')[i] ?? Number.NaN

const outside = (message: string, where: string, value: number, limit?: number): Finding => ({
  rule: 'device-range',
  severity: 'invalidates',
  message,
  ...citing(practiceSource),
  value,
  ...(limit !== undefined && { limit }),
  where: [where],
  remedy: 'change to the range that covers this flow and repeat the reading',
})

const unknownRange = (label: string, name: string, path: string): Finding => ({
  rule: 'device-range',
  severity: 'caution',
  message: `${name} names the range "${label}", which the flow device does not list: its limits cannot be judged`,
  ...citing(practiceSource),
  where: [`${path}.range`],
  remedy: 'add the range with its limits from the calibration certificate',
})

/** The device's calibrated ranges were not given, so nothing can be said about them. */
export const missingRanges: Rule = ({ record }) => {
  if ((record.flowDevice?.ranges ?? []).length > 0) return []
  return [
    {
      rule: 'device-range',
      severity: 'note',
      message:
        'calibrated ranges of the flow device were not given: whether the flows lie inside them cannot be judged',
      ...citing(practiceSource),
      where: ['flowDevice.ranges'],
      remedy: 'add the ranges from the calibration certificate',
    },
  ]
}

/** Each reading is an average over long enough a time. */
export const averagingTime: Rule = ({ record, method }) => {
  const { value: limit, source } = method.limits.averagingTime_s
  return record.runs.flatMap(({ averagingTime_s: time, direction }, i) =>
    time !== undefined && time >= limit
      ? []
      : [
          {
            rule: 'averaging-time',
            severity: 'caution',
            message:
              time === undefined
                ? `${direction}: averaging time was not logged; at least ${limit} s is expected`
                : `${direction}: readings averaged over ${plain(time)} s; at least ${limit} s is expected`,
            ...citing(source),
            ...(time !== undefined && { value: time }),
            limit,
            where: [`runs[${i}].averagingTime_s`],
            remedy: `set the gauge to average over ${limit} s or longer`,
          } satisfies Finding,
        ],
  )
}
