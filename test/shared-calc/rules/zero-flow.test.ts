import { describe, expect, it } from 'vitest'
import { findingsOf } from '../support/findings'
import { recordWith, run } from '../support/records'
import { describeRules, type RuleCase } from './support'

const of = (value: number, count = 10) => Array.from({ length: count }, () => value)
/** Pressures far enough out for the zero-flow pressures tried here. */
const shift = (record: Parameters<RuleCase[1]>[0]) => {
  for (const one of run(record).readings) one.pressure_Pa -= 30
}

/** Readings in tenths of a pascal that scatter by half a per cent. */
const measured = (record: Parameters<RuleCase[1]>[0]) => {
  run(record).readings.forEach((one, i) => {
    one.pressure_Pa -= 0.1
    one.flow_m3_h = (one.flow_m3_h ?? 0) * (1 + (i % 2 === 0 ? 0.005 : -0.005))
  })
}

describeRules({
  // q ∝ Δp^0.65 by the record; half the change against the lowest reading of 10 Pa less the mean zero flow.
  'zero-flow-drift': [
    ['no change', () => undefined],
    [
      'from 0 to 1 Pa: 0.5 Pa of 10.5 Pa, 3.1 % of the flow',
      (r) => {
        run(r).zeroFlowAfter_Pa = of(1)
      },
    ],
    [
      'from 0 to 3 Pa: 1.5 Pa of 11.5 Pa, about 8 %',
      (r) => {
        run(r).zeroFlowAfter_Pa = of(3)
      },
      { severity: 'note', limit: 0.04, where: ['runs[0].zeroFlowBefore_Pa', 'runs[0].zeroFlowAfter_Pa'] },
    ],
    [
      'one period was not logged',
      (r) => {
        run(r).zeroFlowBefore_Pa = of(3)
        delete run(r).zeroFlowAfter_Pa
      },
    ],
  ],
  'zero-flow-copied': [
    [
      'the same values in another order',
      (r) => {
        run(r).zeroFlowBefore_Pa = [-0.9, -1.2, -1.5, -1, -0.8]
        run(r).zeroFlowAfter_Pa = [-1.2, -0.9, -1.5, -1, -0.8]
      },
    ],
    [
      'two values only, as a gauge of whole pascals shows',
      (r) => {
        run(r).zeroFlowBefore_Pa = [-1, -1, -2, -1, -1]
        run(r).zeroFlowAfter_Pa = [-1, -1, -2, -1, -1]
      },
    ],
    [
      'five values, three of them different, entered twice',
      (r) => {
        run(r).zeroFlowBefore_Pa = [-0.9, -1.2, -1.5, -0.9, -1.2]
        run(r).zeroFlowAfter_Pa = [-0.9, -1.2, -1.5, -0.9, -1.2]
      },
      { severity: 'caution', where: ['runs[0].zeroFlowBefore_Pa', 'runs[0].zeroFlowAfter_Pa'] },
    ],
  ],
  'zero-flow-all-zero': [
    ['readings on one exact curve, which nobody measured', () => undefined],
    [
      'all forty are 0, with readings in tenths of a pascal',
      (r) => {
        measured(r)
        run(r).zeroFlowBefore_Pa = of(0)
        run(r).zeroFlowAfter_Pa = of(0)
      },
      {
        severity: 'caution',
        where: [0, 1].flatMap((i) => [`runs[${i}].zeroFlowBefore_Pa`, `runs[${i}].zeroFlowAfter_Pa`]),
      },
    ],
    [
      'one of them is not',
      (r) => {
        measured(r)
        run(r).zeroFlowBefore_Pa = of(0)
        run(r).zeroFlowAfter_Pa = [...of(0, 9), 0.1]
      },
    ],
    [
      'one value before and one after: means, perhaps',
      (r) => {
        measured(r)
        for (const one of r.runs) {
          one.zeroFlowBefore_Pa = of(0, 1)
          one.zeroFlowAfter_Pa = of(0, 1)
        }
      },
    ],
  ],
  'zero-flow-limit': [
    [
      '5 Pa before',
      (r) => {
        shift(r)
        run(r).zeroFlowBefore_Pa = of(5)
      },
    ],
    [
      'just below 5 Pa after',
      (r) => {
        shift(r)
        run(r).zeroFlowAfter_Pa = of(-4.99)
      },
    ],
    [
      'just above 5 Pa before',
      (r) => {
        shift(r)
        run(r).zeroFlowBefore_Pa = of(5.01)
      },
      { severity: 'invalidates', value: 5.01, limit: 5, where: ['runs[0].zeroFlowBefore_Pa'] },
    ],
    [
      'just below −5 Pa after',
      (r) => {
        shift(r)
        run(r).zeroFlowAfter_Pa = of(-5.01)
      },
      { severity: 'invalidates', value: -5.01, limit: 5, where: ['runs[0].zeroFlowAfter_Pa'] },
    ],
    [
      'signed means by themselves: +6 and −6 Pa do not cancel',
      (r) => {
        shift(r)
        run(r).zeroFlowBefore_Pa = [6, -6, 6, -6, 6, -6, 6, -6, 6, -6]
      },
      [
        { severity: 'invalidates', value: 6, limit: 5 },
        { severity: 'invalidates', value: -6, limit: 5 },
      ],
    ],
    [
      'the mean of a sign counts, not a single value',
      (r) => {
        shift(r)
        run(r).zeroFlowBefore_Pa = [9, 1, 1, 1, 1, 1, 1, 1, 1, 1]
      },
    ],
  ],
  'zero-flow-samples': [
    ['10 values before and after', () => undefined],
    [
      '11 values',
      (r) => {
        run(r).zeroFlowBefore_Pa = of(0, 11)
      },
    ],
    [
      '9 values',
      (r) => {
        run(r).zeroFlowBefore_Pa = of(0, 9)
      },
      { severity: 'caution', value: 9, limit: 10, where: ['runs[0].zeroFlowBefore_Pa'] },
    ],
    [
      'not logged after',
      (r) => {
        delete run(r).zeroFlowAfter_Pa
      },
      { severity: 'invalidates', value: 0, where: ['runs[0].zeroFlowAfter_Pa'] },
    ],
    [
      'logged as an empty list',
      (r) => {
        run(r).zeroFlowAfter_Pa = []
      },
      { severity: 'invalidates', value: 0, where: ['runs[0].zeroFlowAfter_Pa'] },
    ],
    [
      'not logged at all',
      (r) => {
        delete run(r).zeroFlowBefore_Pa
        delete run(r).zeroFlowAfter_Pa
      },
      [
        { severity: 'invalidates', where: ['runs[0].zeroFlowBefore_Pa'] },
        { severity: 'invalidates', where: ['runs[0].zeroFlowAfter_Pa'] },
      ],
    ],
  ],
})

describe('what stands in for a missing zero-flow pressure', () => {
  it.each([
    [
      'The values before the readings are',
      (r: Parameters<RuleCase[1]>[0]) => {
        delete run(r).zeroFlowAfter_Pa
      },
    ],
    [
      '0 Pa is',
      (r: Parameters<RuleCase[1]>[0]) => {
        delete run(r).zeroFlowBefore_Pa
        delete run(r).zeroFlowAfter_Pa
      },
    ],
  ])('is named: %s', (standIn, change) => {
    for (const { message } of findingsOf(recordWith(change), 'zero-flow-samples'))
      expect(message).toContain(`${standIn} used instead.`)
  })
})

describe('zero-flow pressures logged wrongly', () => {
  // A house of 20·Δp^0.65 m³/h, read at these induced pressures with the fan's and nature's pressure together on the gauge.
  const induced = [60, 50, 40, 30, 20, 12]
  const logged = (zero: number, told: number, slip = 0.003) =>
    recordWith((r) => {
      r.conditions.outdoorTemperature_C = r.conditions.indoorTemperature_C
      r.runs = (['depressurisation', 'pressurisation'] as const).map((direction) => {
        const side = direction === 'depressurisation' ? -1 : 1
        return {
          direction,
          zeroFlowBefore_Pa: of(told),
          zeroFlowAfter_Pa: of(told),
          readings: induced.map((dp, i) => ({
            pressure_Pa: side * dp + zero,
            flow_m3_h: 20 * dp ** 0.65 * (1 + (i % 2 === 0 ? slip : -slip)),
          })),
        }
      })
    })
  const named = (zero: number, told: number) => findingsOf(logged(zero, told), 'zero-flow-sign')

  it.each([2, -3])('named where %d Pa were subtracted before the readings were logged', (zero) => {
    expect(findingsOf(logged(0, zero), 'zero-flow-subtracted')).toHaveLength(1)
    expect(named(0, zero)).toStrictEqual([])
  })
  it.each([1.5, -2, 3])('named where %d Pa were logged with the opposite sign', (zero) => {
    expect(findingsOf(logged(zero, -zero), 'zero-flow-subtracted')).toStrictEqual([])
    expect(named(zero, -zero)).toHaveLength(1)
  })
  it.each([0, 0.3, 1.5, -2, 3])('not named where %d Pa were logged as they were', (zero) => {
    expect(named(zero, zero)).toStrictEqual([])
    expect(findingsOf(logged(zero, zero), 'zero-flow-subtracted')).toStrictEqual([])
  })
  it('not named where they matter little: 0.3 Pa', () => {
    expect(named(0.3, -0.3)).toStrictEqual([])
  })
})
