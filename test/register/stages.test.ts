import { readFileSync } from 'node:fs'
import { evaluate } from '@draughtbook/shared-calc'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { crossingPressure, stageChange } from '../../shared-calc/src/reports/register/stage-change'
import { lineOf } from '../../shared-calc/src/reports/register/test-line'
import { PRESSURES, powerLaw, recordWith, run } from '../shared-calc/support/records'

/** A test of both directions in reference air on one power law. */
const test = (coefficient: number, exponent: number) => {
  const record = recordWith((one) => {
    one.runs.forEach((_, i) => {
      const side = run(one, i).direction === 'pressurisation' ? 1 : -1
      run(one, i).readings = powerLaw(
        PRESSURES.map((pressure) => side * pressure),
        coefficient,
        exponent,
      )
    })
  })
  return lineOf({ file: 'a', source: 'summary workbook' }, record, evaluate(record))
}

/** Coefficient of the curve that passes 100 m³/h at 30 Pa. */
const through30 = (exponent: number) => 100 / 30 ** exponent

describe('stages of one house', () => {
  it('says so where q50 falls while q4 rises (published property: French Ministry, FAQ RE2020 no. 128)', () => {
    const check = JSON.parse(readFileSync('test/references/crossing-lines.json', 'utf8'))
    expect(check.expected.property).toBe('q50_2<q50_1 and q4_2>q4_1')
    // Its example: two power laws that cross at 30 Pa, the second with the smaller exponent.
    const change = stageChange(test(through30(0.7), 0.7), test(through30(0.6), 0.6))
    expect(change.q50?.change).toBeLessThan(0)
    expect(change.q4?.change).toBeGreaterThan(0)
    expect(change.crossings.map(({ direction }) => direction)).toEqual(['depressurisation', 'pressurisation'])
    for (const { pressure_Pa } of change.crossings) expect(pressure_Pa).toBeCloseTo(30, 6)
    expect(change.warning).toMatch(/^q50 fell by 5\.0 % while q4 rose by 22\.3 %: the lines cross at 30 Pa/)
  })

  it('holds for any two lines that cross between 4 and 50 Pa, and only for those', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.52, max: 0.95, noNaN: true }),
        fc.double({ min: 0.52, max: 0.95, noNaN: true }),
        fc.double({ min: 1, max: 200, noNaN: true }),
        (n1, n2, at) => {
          fc.pre(Math.abs(n1 - n2) > 0.01 && Math.abs(at - 4) > 0.05 && Math.abs(at - 50) > 0.5)
          const curve = (n: number) => ({ coefficient: 100 / at ** n, exponent: n })
          const [a, b] = [curve(n1), curve(n2)]
          expect(crossingPressure(a, b)).toBeCloseTo(at, 6)
          const change = stageChange(test(a.coefficient, n1), test(b.coefficient, n2))
          const between = at > 4 && at < 50
          expect(change.warning !== undefined).toBe(between)
          expect(change.crossings.length > 0).toBe(between)
        },
      ),
      { numRuns: 40 },
    )
  })

  it('gives change, share and leakage area; a curve on one power law leaves no scatter', () => {
    const change = stageChange(test(20, 0.65), test(15, 0.65))
    expect(change.n50?.share).toBeCloseTo(-0.25, 10)
    expect(change.ela4?.share).toBeCloseTo(-0.25, 10)
    expect(change.n50?.change).toBeCloseTo((change.n50?.later ?? 0) - (change.n50?.earlier ?? 0), 12)
    const [low, high] = change.n50?.interval ?? [Number.NaN, Number.NaN]
    expect(high - low).toBeLessThan(1e-6)
    expect(change.warning).toBeUndefined()
    expect(
      crossingPressure({ coefficient: 1, exponent: 0.6 }, { coefficient: 2, exponent: 0.6 }),
    ).toBeUndefined()
  })

  it('says so where one of the two changes lies within the scatter of the fits', () => {
    const line = (q50: number, q4: number, half: number) => ({
      results: { q50, q4 },
      curves: [
        {
          direction: 'pressurisation',
          coefficient: q50 / 50 ** 0.6,
          exponent: 0.6,
          q50: [q50 - half, q50 + half] as const,
          q4: [q4 - half, q4 + half] as const,
        },
      ],
    })
    expect(stageChange(line(100, 20, 0.1), line(90, 21, 0.1)).warning).not.toMatch(/scatter/)
    expect(stageChange(line(100, 20, 1), line(90, 21, 1)).warning).toMatch(
      /one of the two is within the scatter/,
    )
  })

  it('adds independent half-widths as the root of their squares', () => {
    const line = (value: number, half: number) => ({
      results: { q50: value },
      curves: [
        {
          direction: 'pressurisation',
          coefficient: 1,
          exponent: 0.6,
          q50: [value - half, value + half] as const,
          q4: undefined,
        },
      ],
    })
    const change = stageChange(line(100, 3), line(80, 4))
    expect(change.q50?.interval?.[0]).toBeCloseTo(-25, 12)
    expect(change.q50?.interval?.[1]).toBeCloseTo(-15, 12)
  })
})
