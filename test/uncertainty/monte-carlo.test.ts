import type { TestRecord } from '@draughtbook/shared-calc'
import { evaluate, parseRecord } from '@draughtbook/shared-calc'
import { describe, expect, it } from 'vitest'
import { randomFrom } from '../../shared-calc/src/assessment/simulation/random.js'
import { Sample } from '../../shared-calc/src/assessment/simulation/sample.js'
import { type SimulatedFigure, simulate } from '../../shared-calc/src/assessment/simulation/simulate.js'
import { powerLaw, recordBy, usual_Pa } from '../methods/record-by'
import { randomRecord } from './random-record'

function simulated(record: TestRecord, draws: number, seed = 1): SimulatedFigure[] {
  const steps = simulate(record, { draws, seed })
  for (;;) {
    const step = steps.next()
    if (step.done) return step.value
  }
}

describe('the budget against Monte Carlo through the same formulas (JCGM 101:2008)', () => {
  // 100,000 draws give a standard deviation to 0.2 %.
  it.each(Array.from({ length: 50 }, (_, seed) => seed))(
    'agrees within 1 % in every figure of invented record %i',
    (seed) => {
      const record = parseRecord(randomRecord(seed))
      const { uncertainty } = evaluate(record)
      const figures = simulated(record, 100_000, seed)
      expect(figures.length).toBeGreaterThanOrEqual(5)
      for (const { quantity, relativeStandardUncertainty, failed } of figures) {
        const budget = uncertainty?.figures.find((figure) => figure.quantity === quantity)
        const ratio = relativeStandardUncertainty / (budget?.relativeStandardUncertainty ?? Number.NaN)
        expect(failed).toBe(0)
        expect(Math.abs(ratio - 1), `${quantity}: Monte Carlo over budget ${ratio}`).toBeLessThan(0.01)
      }
    },
  )

  it.each([
    ['iso-9972:2015', usual_Pa],
    ['astm-e779-19', usual_Pa],
    ['can-cgsb-149.10-2019', usual_Pa],
    ['astm-e1827-22-one-point', [50, 51, 50, 49, 50]],
    ['astm-e1827-22-two-point', [50, 51, 49, 50, 50, 12.5, 12.4, 12.6, 12.5, 12.5]],
    ['ansi-resnet-icc-380', [50]],
  ] as const)('agrees for %s, flows typed for reference air', (method, pressures) => {
    const readings = powerLaw(80, 0.62, pressures).map((reading, i) => ({
      ...reading,
      flow_m3_h: reading.flow_m3_h * (1 + 0.003 * Math.sin(7 * i)),
    }))
    const base = recordBy(method, readings, { uncertainty: {} })
    const record = parseRecord({
      ...base,
      format: 'draughtbook/record@3',
      conditions: { ...base.conditions, outdoorTemperature_C: 10, barometricPressure_Pa: 95_000 },
      runs: base.runs.map((run) => ({ ...run, flowStatedAt: 'reference air' })),
    })
    const { uncertainty } = evaluate(record)
    for (const { quantity, relativeStandardUncertainty } of simulated(record, 40_000)) {
      const budget = uncertainty?.figures.find((figure) => figure.quantity === quantity)
      const ratio = relativeStandardUncertainty / (budget?.relativeStandardUncertainty ?? Number.NaN)
      // 40,000 draws give a standard deviation to 0.35 %.
      expect(Math.abs(ratio - 1), `${quantity}: Monte Carlo over budget ${ratio}`).toBeLessThan(0.015)
    }
  })

  it('gives the probability of meeting the target that the decision states', () => {
    const record = parseRecord(randomRecord(3))
    const { results } = evaluate(record)
    const limit = (results.n50?.value ?? Number.NaN) * 1.03
    const near = { ...record, target: { quantity: 'n50', limit, directions: 'any' } } as TestRecord
    const [decision] = evaluate(near).decision ?? []
    const found = simulated(near, 60_000).find(({ quantity }) => quantity === 'n50')?.probability
    expect(found).toBeGreaterThan(0.5)
    expect(decision?.probability).toBeCloseTo(found ?? Number.NaN, 2)
  })

  it('gives the same draws for the same seed, and others for another', () => {
    const record = parseRecord(randomRecord(5))
    const [first, again, other] = [
      simulated(record, 500, 7),
      simulated(record, 500, 7),
      simulated(record, 500, 8),
    ]
    expect(again).toEqual(first)
    expect(other).not.toEqual(first)
  })

  it('tells its progress on the way', () => {
    const steps = [...simulate(parseRecord(randomRecord(5)), { draws: 6000 })]
    expect(steps.length).toBeGreaterThanOrEqual(2)
    expect(steps.at(-1)).toBe(1)
    expect(steps).toEqual([...steps].sort((x, y) => x - y))
  })
})

describe('random numbers', () => {
  it('are normal: shares below −1.96, −1, 0, 1 and 1.645 as in the tables', () => {
    const { normal } = randomFrom(42)
    const draws = Array.from({ length: 400_000 }, normal)
    // Three standard deviations of a share of 400,000 draws.
    for (const [z, share] of [
      [-1.96, 0.025],
      [-1, 0.1587],
      [0, 0.5],
      [1, 0.8413],
      [1.645, 0.95],
      [-3.5, 0.000233],
      [3.5, 0.999767],
    ] as const)
      expect(Math.abs(draws.filter((x) => x < z).length / draws.length - share)).toBeLessThan(
        3 * Math.sqrt((share * (1 - share)) / draws.length) + 5e-5,
      )
  })
})

describe('a sample', () => {
  it('gives mean, standard deviation, interval and share, and counts what is no number', () => {
    const sample = new Sample(200)
    for (let i = 1; i <= 101; i += 1) sample.add(i)
    sample.add(Number.NaN)
    const summary = sample.summary()
    expect(summary.mean).toBe(51)
    // Variance of 1…N is N(N + 1)/12.
    expect(summary.standardUncertainty).toBeCloseTo(Math.sqrt((101 * 102) / 12), 10)
    expect(summary.interval95[0]).toBeGreaterThan(2)
    expect(summary.failed).toBe(1)
    expect(sample.shareUpTo(25)).toBeCloseTo(25 / 101, 12)
  })
})
