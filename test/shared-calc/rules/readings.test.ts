import { powerLaw, reading, run } from '../support/records'
import { describeRules } from './support'

const pressures = (...values: number[]) => powerLaw(values, 20, 0.65)
const ALL = ['runs[0].readings']

describeRules({
  'too-few-readings': [
    ['five readings are enough', (r) => run(r).readings.splice(5)],
    [
      'four are not',
      (r) => run(r).readings.splice(4),
      { severity: 'invalidates', value: 4, limit: 5, where: ALL },
    ],
    [
      'each direction counts by itself',
      (r) => run(r, 1).readings.splice(4),
      { severity: 'invalidates', value: 4, where: ['runs[1].readings'] },
    ],
  ],
  'highest-pressure': [
    [
      '50 Pa are enough',
      (r) => {
        run(r).readings = pressures(-50, -40, -30, -20, -10)
      },
    ],
    [
      'just above 50 Pa',
      (r) => {
        run(r).readings = pressures(-50.1, -40, -30, -20, -10)
      },
    ],
    [
      'just below 50 Pa',
      (r) => {
        run(r).readings = pressures(-49.9, -40, -30, -20, -10)
      },
      { severity: 'invalidates', value: 49.9, limit: 50, where: ALL },
    ],
    [
      'the zero-flow pressure counts: 50 Pa logged, 49 Pa induced',
      (r) => {
        run(r).readings = pressures(-50, -40, -30, -20, -11)
        run(r).zeroFlowBefore_Pa = Array.from({ length: 10 }, () => -1)
        run(r).zeroFlowAfter_Pa = Array.from({ length: 10 }, () => -1)
      },
      { severity: 'invalidates', value: 49 },
    ],
    [
      'a large building with its reason may stop at 25 Pa',
      (r) => {
        r.building.largeBuilding = 'sports hall'
        run(r).readings = pressures(-25, -21, -18, -14, -10)
      },
      { severity: 'caution', value: 25, limit: 50, where: ALL },
    ],
    [
      'but not below',
      (r) => {
        r.building.largeBuilding = 'sports hall'
        run(r).readings = pressures(-24.9, -21, -18, -14, -10)
      },
      { severity: 'invalidates', value: 24.9, limit: 25 },
    ],
    [
      'a large building at 50 Pa needs no excuse',
      (r) => {
        r.building.largeBuilding = 'sports hall'
      },
    ],
  ],
  'lowest-pressure': [
    ['10 Pa', () => undefined],
    [
      'just above 10 Pa',
      (r) => {
        reading(r, 5).pressure_Pa = -10.1
      },
    ],
    [
      'just below 10 Pa',
      (r) => {
        reading(r, 5).pressure_Pa = -9.9
      },
      { severity: 'caution', value: 9.9, limit: 10, where: ['runs[0].readings[5].pressure_Pa'] },
    ],
    [
      'five times the zero-flow pressure: 12.5 Pa at 2.5 Pa',
      (r) => {
        run(r).zeroFlowBefore_Pa = Array.from({ length: 10 }, () => -2.5)
        run(r).zeroFlowAfter_Pa = Array.from({ length: 10 }, () => -2.5)
        reading(r, 5).pressure_Pa = -15
      },
    ],
    [
      'just below five times the zero-flow pressure',
      (r) => {
        run(r).zeroFlowBefore_Pa = Array.from({ length: 10 }, () => -2.5)
        run(r).zeroFlowAfter_Pa = Array.from({ length: 10 }, () => -2.5)
        reading(r, 5).pressure_Pa = -14.9
      },
      { severity: 'caution', value: 12.4, limit: 12.5 },
    ],
    [
      'the larger signed mean counts, even where the means cancel',
      (r) => {
        run(r).zeroFlowBefore_Pa = [3, -3, 3, -3, 3, -3, 3, -3, 3, -3]
        run(r).zeroFlowAfter_Pa = [1, -1, 1, -1, 1, -1, 1, -1, 1, -1]
      },
      { severity: 'caution', value: 10, limit: 15 },
    ],
  ],
  'reading-spacing': [
    ['10 Pa apart', () => undefined],
    [
      '12 Pa apart: "about 10 Pa" has 2 Pa of slack',
      (r) => {
        run(r).readings = pressures(-58, -46, -34, -22, -10)
      },
    ],
    [
      'just over 12 Pa apart',
      (r) => {
        run(r).readings = pressures(-58.1, -46, -34, -22, -10)
      },
      {
        severity: 'caution',
        value: 12.1,
        limit: 10,
        where: ['runs[0].readings[0].pressure_Pa', 'runs[0].readings[1].pressure_Pa'],
      },
    ],
    [
      'neighbours in pressure, whatever their order in the log',
      (r) => {
        run(r).readings = pressures(-10, -60, -20, -50, -35)
      },
      [
        { value: 15, where: ['runs[0].readings[2].pressure_Pa', 'runs[0].readings[4].pressure_Pa'] },
        { value: 15, where: ['runs[0].readings[3].pressure_Pa', 'runs[0].readings[4].pressure_Pa'] },
      ],
    ],
  ],
  'pressure-ceiling': [
    ['100 Pa', (r) => run(r).readings.push(...pressures(-100, -90, -80, -70))],
    ['just below 100 Pa', (r) => run(r).readings.push(...pressures(-99.9, -90, -80, -70))],
    [
      'just above 100 Pa',
      (r) => run(r).readings.push(...pressures(-100.1, -90, -80, -70)),
      { severity: 'caution', value: 100.1, limit: 100, where: ['runs[0].readings[6].pressure_Pa'] },
    ],
  ],
  'duplicate-reading': [
    [
      'the same pressure with another flow is another reading',
      (r) => run(r).readings.push({ pressure_Pa: -30, flow_m3_h: 183 }),
    ],
    [
      'the same pressure and flow',
      (r) => run(r).readings.push({ ...reading(r, 3) }),
      { severity: 'note', where: ['runs[0].readings[3]', 'runs[0].readings[6]'] },
    ],
    [
      'the same reading in the other direction is none',
      (r) => {
        run(r, 1).readings = pressures(60, 50, 40, 30, 20, 10)
      },
    ],
  ],
  'identical-runs': [
    ['both on one exact curve, as no instrument shows them', () => undefined],
    [
      'a run copied with its signs turned',
      (r) => {
        for (const [i, one] of run(r).readings.entries())
          one.flow_m3_h = Math.round((one.flow_m3_h ?? Number.NaN) * (1 + (i % 2) * 0.01))
        run(r, 1).readings = run(r).readings.map((one) => ({ ...one, pressure_Pa: -one.pressure_Pa }))
      },
      { severity: 'caution', where: ['runs[0].readings', 'runs[1].readings'] },
    ],
    [
      'one reading apart',
      (r) => {
        for (const one of run(r).readings) one.flow_m3_h = Math.round(one.flow_m3_h ?? Number.NaN)
        run(r, 1).readings = run(r).readings.map((one) => ({ ...one, pressure_Pa: -one.pressure_Pa }))
        reading(r, 2, 1).flow_m3_h = (reading(r, 2, 1).flow_m3_h ?? Number.NaN) + 1
      },
    ],
  ],
})
