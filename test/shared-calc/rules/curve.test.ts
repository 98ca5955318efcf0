import { describe, expect, it } from 'vitest'
import { evaluateWorked } from '../../../shared-calc/src/assessment/evaluate.js'
import { correlation, exponentRange } from '../../../shared-calc/src/evaluation/rules/curve.js'
import { methodById } from '../../../shared-calc/src/methods/index.js'
import { PRESSURES, powerLaw, reading, recordWith, run } from '../support/records'
import { describeRules, type RuleCase } from './support'

const exponent = (n: number) => (r: Parameters<RuleCase[1]>[0]) => {
  run(r).readings = powerLaw(
    PRESSURES.map((pressure) => -pressure),
    20,
    n,
  )
}
/** Flows that stray from the power law by this share to either side in turn. */
const scattered = (share: number) => (r: Parameters<RuleCase[1]>[0]) => {
  for (const [i, one] of run(r).readings.entries())
    one.flow_m3_h = (one.flow_m3_h ?? Number.NaN) * (1 + (i % 2 === 0 ? share : -share))
}

describeRules({
  'exponent-range': [
    ['just above 0.5', exponent(0.5 + 1e-9)],
    [
      'just below 0.5',
      exponent(0.5 - 1e-9),
      { severity: 'invalidates', value: 0.5 - 1e-9, limit: 0.5, where: ['runs[0].readings'] },
    ],
    ['just below 1', exponent(1 - 1e-9)],
    [
      'just above 1',
      exponent(1 + 1e-9),
      { severity: 'invalidates', value: 1 + 1e-9, limit: 1, where: ['runs[0].readings'] },
    ],
  ],
  correlation: [
    ['a power law without noise', () => undefined],
    // r² of these readings: 0.9801 and 0.9795.
    ['just above 0.98', scattered(0.062)],
    [
      'just below 0.98',
      scattered(0.063),
      { severity: 'invalidates', limit: 0.98, where: ['runs[0].readings'] },
    ],
  ],
  outlier: [
    ['a power law without noise', () => undefined],
    ['even scatter', scattered(0.01)],
    [
      'one reading 5 % off a quiet line',
      (r) => {
        scattered(0.001)(r)
        reading(r, 2).flow_m3_h = (reading(r, 2).flow_m3_h ?? 0) * 1.05
      },
      { severity: 'note', where: ['runs[0].readings[2]'] },
    ],
    [
      'one reading 1.2 % off a quiet line: no more than readings of 0.5 % bring by chance',
      (r) => {
        scattered(0.0005)(r)
        reading(r, 2).flow_m3_h = (reading(r, 2).flow_m3_h ?? 0) * 1.012
      },
    ],
    [
      'one reading off an otherwise perfect line',
      (r) => {
        reading(r, 2).flow_m3_h = (reading(r, 2).flow_m3_h ?? 0) * 1.05
      },
      { severity: 'note', where: ['runs[0].readings[2]'] },
    ],
  ],
  'extrapolated-target': [
    ['a target at 50 Pa inside the readings', () => undefined],
    [
      'at the highest reading',
      (r) => {
        for (const [i, side] of [-1, 1].entries())
          run(r, i).readings = powerLaw(
            [50, 40, 30, 20, 10].map((p) => side * p),
            20,
            0.65,
          )
      },
    ],
    [
      'just above the highest reading',
      (r) => {
        run(r).readings = powerLaw([-49.9, -40, -30, -20, -10], 20, 0.65)
      },
      { severity: 'note', value: 50, limit: 49.9, where: ['runs[0].readings'] },
    ],
    [
      'at 4 Pa, below all readings',
      (r) => {
        r.target = { preset: 'france-house' }
      },
      [{ severity: 'note', value: 4, limit: 10, where: ['runs[0].readings', 'runs[1].readings'] }],
    ],
  ],
})

// An exponent or r² of exactly the limit cannot be had from readings; the limit is moved to the value instead. Values
// within 1e-9 of each other count as equal.
describe('exactly at the limit', () => {
  const record = recordWith(scattered(0.01))
  const { test } = evaluateWorked(record)
  const curve = test.runs[0]?.curve
  const method = methodById('iso-9972:2015')
  const n = curve?.value('n') ?? Number.NaN
  const r2 = curve?.value('r_2') ?? Number.NaN
  const run0 = { ...test, runs: test.runs.slice(0, 1) }
  const withExponent = (lowest: number, highest: number) =>
    exponentRange({
      record,
      test: run0,
      method: {
        ...method,
        limits: { ...method.limits, exponent: { ...method.limits.exponent, lowest, highest } },
      },
    })
  const withCorrelation = (value: number) =>
    correlation({
      record,
      test: run0,
      method: {
        ...method,
        limits: { ...method.limits, rSquared: { value, source: method.limits.exponent.source } },
      },
    })

  it('the exponent is still in its range', () => {
    expect(withExponent(n, 1)).toEqual([])
    expect(withExponent(0.5, n)).toEqual([])
    expect(withExponent(n * (1 + 2e-9), 1)).toHaveLength(1)
    expect(withExponent(0.5, n * (1 - 2e-9))).toHaveLength(1)
  })

  it('r² is still enough', () => {
    expect(withCorrelation(r2)).toEqual([])
    expect(withCorrelation(r2 * (1 + 2e-9))).toHaveLength(1)
  })
})
