import { reading, run } from '../support/records'
import { describeRules, type RuleCase } from './support'

type Change = RuleCase[1]
const due =
  (field: 'pressureGauge' | 'flowDevice', date: string | undefined): Change =>
  (r) => {
    const instrument = r[field]
    if (!instrument) throw new Error(`no ${field}`)
    if (date === undefined) delete instrument.calibrationDue
    else instrument.calibrationDue = date
  }
/** The first run with flows by the device's own pressure, over one range from 20 to 300 Pa. */
const byDevice =
  (limits: object, change: Change = () => undefined): Change =>
  (r) => {
    r.flowDevice = {
      ...r.flowDevice,
      ranges: [{ label: 'wide', coefficient: 20, exponent: 0.5, ...limits }],
    }
    const { readings } = run(r)
    run(r).readings = readings.map(({ pressure_Pa, flow_m3_h = 0 }) => ({
      pressure_Pa,
      devicePressure_Pa: (flow_m3_h / 20) ** 2,
      range: 'wide',
    }))
    change(r)
  }
const flowLimits =
  (minimumFlow_m3_h: number, maximumFlow_m3_h: number): Change =>
  (r) => {
    // The same flow in both directions at 60 Pa is the highest, at 10 Pa the lowest.
    r.flowDevice = { ...r.flowDevice, ranges: [{ label: 'only', minimumFlow_m3_h, maximumFlow_m3_h }] }
    r.runs.splice(1)
    r.target = { quantity: 'q50', limit: 1e4, directions: 'any' }
  }
const lowest = 20 * 10 ** 0.65
const highest = 20 * 60 ** 0.65

describeRules({
  'calibration-expired': [
    ['due on the day of the test', due('flowDevice', '2026-10-14')],
    ['due the day after', due('pressureGauge', '2026-10-15')],
    [
      'due the day before',
      due('flowDevice', '2026-10-13'),
      { severity: 'caution', where: ['flowDevice.calibrationDue'] },
    ],
    [
      'gauge likewise',
      due('pressureGauge', '2026-10-13'),
      { severity: 'caution', where: ['pressureGauge.calibrationDue'] },
    ],
    [
      'not logged',
      due('pressureGauge', undefined),
      { severity: 'caution', where: ['pressureGauge.calibrationDue'] },
    ],
    [
      'no instruments logged at all',
      (r) => {
        delete r.pressureGauge
        delete r.flowDevice
      },
      [
        { severity: 'caution', where: ['pressureGauge.calibrationDue'] },
        { severity: 'caution', where: ['flowDevice.calibrationDue'] },
      ],
    ],
  ],
  'device-range': [
    ['flows at the very ends of the range', flowLimits(lowest, highest)],
    [
      'lowest flow just below the range',
      flowLimits(lowest + 0.01, highest),
      { severity: 'invalidates', value: lowest, where: ['runs[0].readings[5].flow_m3_h'] },
    ],
    [
      'highest flow just above the range',
      flowLimits(lowest, highest - 0.01),
      { severity: 'invalidates', value: highest, where: ['runs[0].readings[0].flow_m3_h'] },
    ],
    ['device pressures inside the range', byDevice({ minimumPressure_Pa: 15, maximumPressure_Pa: 300 })],
    [
      'device pressure at its lowest',
      byDevice({ minimumPressure_Pa: 25, maximumPressure_Pa: 300 }, (r) => {
        reading(r, 5).devicePressure_Pa = 25
      }),
    ],
    [
      'device pressure just below the range',
      byDevice({ minimumPressure_Pa: 20, maximumPressure_Pa: 300 }, (r) => {
        reading(r, 5).devicePressure_Pa = 19.9
      }),
      { severity: 'invalidates', value: 19.9, limit: 20, where: ['runs[0].readings[5].devicePressure_Pa'] },
    ],
    [
      'device pressure just above the range, logged with a minus',
      byDevice({ minimumPressure_Pa: 15, maximumPressure_Pa: 210 }, (r) => {
        reading(r, 0).devicePressure_Pa = -210.1
      }),
      { severity: 'invalidates', value: 210.1, limit: 210, where: ['runs[0].readings[0].devicePressure_Pa'] },
    ],
    [
      'flows above the range, worked out from the device pressure or indicated',
      byDevice({ minimumFlow_m3_h: 10, maximumFlow_m3_h: 280 }),
      [
        { severity: 'invalidates', limit: 280, where: ['runs[0].readings[0].devicePressure_Pa'] },
        { severity: 'invalidates', where: ['runs[1].readings[0].flow_m3_h'] },
      ],
    ],
    [
      'a flow between two ranges lies in none',
      (r) => {
        r.flowDevice = {
          ...r.flowDevice,
          ranges: [
            { label: 'low', minimumFlow_m3_h: 80, maximumFlow_m3_h: 150 },
            { label: 'high', minimumFlow_m3_h: 200, maximumFlow_m3_h: 400 },
          ],
        }
      },
      // 20·30^0.65 = 182 m³/h in both directions.
      [
        { severity: 'invalidates', where: ['runs[0].readings[3].flow_m3_h'] },
        { severity: 'invalidates', where: ['runs[1].readings[3].flow_m3_h'] },
      ],
    ],
    [
      'a range named for an indicated flow, which the device does not list',
      (r) => {
        reading(r, 0).range = 'other'
      },
      { severity: 'caution', where: ['runs[0].readings[0].range'] },
    ],
    [
      'no ranges given',
      (r) => {
        delete r.flowDevice?.ranges
      },
      { severity: 'note', where: ['flowDevice.ranges'] },
    ],
  ],
  'assumed-reference-density': [
    ['given', byDevice({})],
    [
      'not given, and flows go by the device pressure',
      byDevice({}, (r) => {
        delete r.flowDevice?.referenceDensity_kg_m3
      }),
      { severity: 'note', value: 1.2041, where: ['flowDevice.referenceDensity_kg_m3'] },
    ],
    [
      'not given, but flows are indicated',
      (r) => {
        delete r.flowDevice?.referenceDensity_kg_m3
      },
    ],
  ],
  'averaging-time': [
    ['20 s', () => undefined],
    [
      'just above 20 s',
      (r) => {
        run(r).averagingTime_s = 21
      },
    ],
    [
      'just below 20 s',
      (r) => {
        run(r).averagingTime_s = 19.9
      },
      { severity: 'caution', value: 19.9, limit: 20, where: ['runs[0].averagingTime_s'] },
    ],
    [
      'not logged',
      (r) => {
        delete run(r, 1).averagingTime_s
      },
      { severity: 'caution', limit: 20, where: ['runs[1].averagingTime_s'] },
    ],
  ],
})
