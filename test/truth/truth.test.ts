import { evaluate, methods } from '@draughtbook/shared-calc'
import { describe, expect, it } from 'vitest'
import { type Climate, climates, type House, REFERENCE_DENSITY, testOf, type Way, ways } from './house'

const altitudes_m = [0, 1609, 2400]
const many = [60, 52, 45, 38, 30, 22, 15]

interface Case {
  readonly stations_Pa: readonly number[]
  /** Whether the method corrects the viscosity: then it is exact for leaks that feel it. */
  readonly viscous: boolean
  readonly exponents: readonly number[]
  /** Largest error of q50, as a share, where the method's own factors only come near the truth. */
  readonly near?: number
  readonly at_Pa?: number
}

const line = (viscous: boolean, stations_Pa = many): Case => ({
  stations_Pa,
  viscous,
  exponents: [0.55, 0.65, 0.8],
})
const repeated = (...stations: number[]): number[] => stations.flatMap((station) => Array(5).fill(station))

/** Every method: what it reads at, and for which law of the leaks it is exact. */
const cases: Readonly<Record<string, Case>> = {
  'iso-9972:2015': line(false),
  'en-13829:2001': line(false),
  'astm-e779-19': line(true),
  'astm-e1827-22-one-point': { ...line(true, repeated(50)), exponents: [0.65] },
  'astm-e1827-22-two-point': line(true, repeated(50, 12.5)),
  'can-cgsb-149.10-2019': line(false),
  'ansi-resnet-icc-380': { ...line(false, [50]), exponents: [0.65], near: 0.01 },
  'astm-e3158-18': { ...line(true, [78, 72, 66, 60, 54, 48, 42, 36, 30, 26]), at_Pa: 75 },
  'astm-e3158-24': { ...line(true, [78, 72, 66, 60, 54, 48, 42, 36, 30, 26]), at_Pa: 75 },
}

/** Relative error of the leakage rate at 50 Pa against the law of the house. */
function errorOf(method: string, house: House, climate: Climate, altitude_m: number, way: Way): number {
  const { stations_Pa } = cases[method] as Case
  const { results } = evaluate(testOf(house, climate, altitude_m, way, method, stations_Pa))
  return results.q50.value / (house.coefficient * 50 ** house.exponent) - 1
}

it('every method is here', () => {
  expect(Object.keys(cases).sort()).toEqual(methods.map(({ id }) => id).sort())
})

// Densities by psychrolib, the law of the leaks, mass conservation and the device are written in house.ts, apart from the
// project: 0.05 % leaves room for the two forms of moist air.
describe.each(Object.entries(cases))(
  'a house of known law by %s',
  (method, { viscous, exponents, near = 0.0005 }) => {
    it.each(ways)(
      `is found within ${near * 100} %% at 0, 1 609 and 2 400 m in three climates, flows stated by %s`,
      (way) => {
        for (const exponent of exponents)
          for (const [name, climate] of Object.entries(climates))
            for (const altitude_m of altitudes_m) {
              const error = errorOf(method, { coefficient: 40, exponent, viscous }, climate, altitude_m, way)
              expect(Math.abs(error), `n ${exponent}, ${name}, ${altitude_m} m`).toBeLessThan(near)
            }
      },
    )
  },
)

describe('other figures of a house of known law', () => {
  const house = { coefficient: 40, exponent: 0.62, viscous: false }
  const evaluated = evaluate(
    testOf(house, climates['cold winter'], 1609, 'reference air', 'iso-9972:2015', many),
  )

  it('exponent, leakage at 4 and 10 Pa, areas', () => {
    for (const run of evaluated.runs) expect(run.airFlowExponent.value).toBeCloseTo(0.62, 9)
    const flow = (pressure: number) => 40 * pressure ** 0.62
    // Orifice law with a discharge coefficient of 1: A = q/√(2Δp/ρ₀).
    const area_cm2 = (pressure: number) =>
      (1e4 * flow(pressure)) / 3600 / Math.sqrt((2 * pressure) / REFERENCE_DENSITY)
    for (const [found, truth] of [
      [evaluated.results.q4.value, flow(4)],
      [evaluated.results.q10.value, flow(10)],
      [evaluated.results.ela4.value, area_cm2(4)],
      [evaluated.results.ela10.value, area_cm2(10)],
    ] as const)
      expect(found / truth).toBeCloseTo(1, 4)
  })

  it('at 75 Pa by ASTM E3158', () => {
    const large = { coefficient: 4000, exponent: 0.6, viscous: true }
    const { stations_Pa } = cases['astm-e3158-18'] as Case
    const { official = [] } = evaluate(
      testOf(large, climates['cold winter'], 2400, 'device air', 'astm-e3158-18', stations_Pa),
    )
    const rate = official.find(({ term }) => term === 'air leakage rate at 75 Pa')
    expect((rate?.value ?? 0) / (4000 * 75 ** 0.6)).toBeCloseTo(1, 3)
  })
})

// What the notes of the methods say of their own approximation, in per cent; mean of both directions, n = 0.65.
describe('where a method is not exact, its notes say by how much', () => {
  const percent = (method: string, viscous: boolean, climate: Climate, altitude_m: number) =>
    100 * errorOf(method, { coefficient: 40, exponent: 0.65, viscous }, climate, altitude_m, 'device air')
  const noteOf = (id: string) => methods.find((method) => method.id === id)?.notes.join(' ') ?? ''

  it.each(['iso-9972:2015', 'en-13829:2001', 'can-cgsb-149.10-2019'])(
    '%s: no correction of viscosity',
    (id) => {
      expect(noteOf(id)).toContain('1.2 % too high at −10 °C outdoors and 0.8 % too low at 36 °C')
      expect(percent(id, true, climates['cold winter'], 1609)).toBeCloseTo(1.2, 1)
      expect(percent(id, true, climates['humid summer'], 1609)).toBeCloseTo(-0.8, 1)
    },
  )

  it('ANSI/RESNET/ICC 380: straight altitude factor, no density of moist air, nothing below its thresholds', () => {
    expect(noteOf('ansi-resnet-icc-380')).toContain('within 1.0 %')
    expect(percent('ansi-resnet-icc-380', false, climates['cold winter'], 2400)).toBeCloseTo(1, 1)
    expect(percent('ansi-resnet-icc-380', false, climates['humid summer'], 0)).toBeCloseTo(-0.6, 1)
  })
})

// A test of the tests: a flow taken for what it is not lies far outside what is allowed above.
it('a flow for reference air read as one of the air in the device is wrong by more than 10 % at 2 400 m', () => {
  const house = { coefficient: 40, exponent: 0.65, viscous: false }
  const record = testOf(house, climates['mild spring'], 2400, 'reference air', 'iso-9972:2015', many)
  for (const run of record.runs) run.flowStatedAt = 'device air'
  expect(evaluate(record).results.q50.value / (40 * 50 ** 0.65)).toBeLessThan(0.9)
})
