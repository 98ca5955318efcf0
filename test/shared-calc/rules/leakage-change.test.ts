import { evaluate, type TestRecord } from '@draughtbook/shared-calc'
import { describe, expect, it } from 'vitest'
import { workOut } from '../../../shared-calc/src/evaluation/work/work-out.js'
import { methodById } from '../../../shared-calc/src/methods/index.js'
import { recordWith, run } from '../support/records'
import { describeRules } from './support'

// Readings in mixed order, with 9 % more flow from the fifth on. Two parallel lines through their logarithms by numpy's
// linalg.lstsq, and the quantile by scipy.stats.t.ppf(1 − 0.005/5/2, 5):
const mixed: readonly (readonly [number, number])[] = [
  [60, 1000],
  [30, 640],
  [50, 893],
  [20, 493],
  [40, 842],
  [15, 446],
  [55, 1035],
  [25, 620],
]
const byNumpy = {
  s_z: 0.08711362,
  n_z: 0.64704609,
  SSE_z: 1.5832019854719e-5,
  S_z: 0.00128594,
  t_z: 6.868826625881276,
  f_z: 0.0910206358162375,
}

const withReadings = (list: readonly (readonly [number, number])[]) => (record: TestRecord) => {
  run(record).readings = list.map(([pressure, flow_m3_h]) => ({ pressure_Pa: -pressure, flow_m3_h }))
}
/** The change undone, so that all readings lie on the first line. */
const even = mixed.map(([pressure, flow], i) => [pressure, i < 4 ? flow : flow / 1.0910206] as const)
const falling = [...even]
  .sort(([a], [b]) => b - a)
  .map(([pressure, flow], i) => [pressure, i < 4 ? flow : flow * 1.09] as const)

describe('two parallel lines through the readings before and after a change', () => {
  const record = recordWith(withReadings(mixed))
  const [found] = workOut(record, methodById(record.test.method)).steps

  it('change of the flow, exponent, scatter and limit agree with numpy and scipy', () => {
    expect(found?.from).toBe(4)
    for (const [symbol, value] of Object.entries(byNumpy))
      expect((found?.step.value(symbol as keyof typeof byNumpy) ?? 0) / value, symbol).toBeCloseTo(1, 5)
  })

  it('stands in the working of the test only where a change was found', () => {
    const titles = (one: TestRecord) =>
      evaluate(one, { trace: true }).trace?.map(({ symbol }) => symbol) ?? []
    expect(titles(record)).toContain('s_z')
    expect(titles(recordWith(withReadings(even)))).not.toContain('s_z')
  })
})

describeRules({
  'leakage-step': [
    ['readings on one line', () => undefined],
    ['readings on one line but for what instruments scatter', withReadings(even)],
    [
      '9 % more from the fifth reading on',
      withReadings(mixed),
      { severity: 'caution', where: ['runs[0].readings[4]'] },
    ],
    [
      '9 % less from the fifth reading on',
      withReadings(even.map(([pressure, flow], i) => [pressure, i < 4 ? flow : flow * 0.91])),
      { severity: 'caution', where: ['runs[0].readings[4]'] },
    ],
    [
      'a change of 1 %, no more than instruments scatter',
      withReadings(even.map(([pressure, flow], i) => [pressure, i < 4 ? flow : flow * 1.01])),
    ],
    [
      '9 % more from the fifth reading on, pressures falling',
      withReadings(falling),
      { where: ['runs[0].readings[4]'] },
    ],
    [
      'one reading alone that is off: an outlier',
      withReadings(even.map(([pressure, flow], i) => [pressure, i === 3 ? flow * 1.1 : flow])),
    ],
    [
      'all readings before at one pressure, all others at another: the exponent may be as it is',
      withReadings([60, 60, 60, 20, 20, 20].map((pressure, i) => [pressure, (i < 3 ? 1000 : 600) + i])),
    ],
  ],
})

describe('what it says of the order of the readings', () => {
  const said = (change: (record: TestRecord) => void) => {
    const found = evaluate(recordWith(change)).findings.find(({ rule }) => rule === 'leakage-step')
    return { message: found?.message ?? '', remedy: found?.remedy ?? '' }
  }

  it('pressures in mixed order were listed as they were taken', () => {
    const { message } = said(withReadings(mixed))
    expect(message).toContain('from reading 5 on, the leakage is 9.1 % higher')
    expect(message).not.toContain('sorted')
  })

  it('falling or rising pressures may have been sorted, so no time is claimed', () => {
    const down = said(withReadings(falling))
    expect(down.message).toContain('from reading 5 on, at the lower pressures,')
    expect(down.message).toContain('A list sorted by pressure does not show when')
    const up = said(withReadings([...falling].reverse()))
    expect(up.message).toContain('from reading 5 on, at the higher pressures,')
    expect(up.message).toContain('lower (limit')
  })

  it('another range of the flow device from that reading on comes first', () => {
    const { message, remedy } = said((record) => {
      record.flowDevice = {
        referenceDensity_kg_m3: 1.2041,
        ranges: ['A', 'B'].map((label) => ({ label, coefficient: 10, exponent: 0.5 })),
      }
      run(record).readings = mixed.map(([pressure, flow], i) => ({
        pressure_Pa: -pressure,
        devicePressure_Pa: (flow / 10) ** 2,
        range: i < 4 ? 'A' : 'B',
      }))
    })
    expect(message).toContain('from reading 5 on, where the range of the flow device changes,')
    expect(remedy).toMatch(/^Check that each reading names the right range/)
  })
})
