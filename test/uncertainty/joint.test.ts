import { type Evaluation, evaluate, type TestRecord } from '@draughtbook/shared-calc'
import { describe, expect, it } from 'vitest'
import { byRule, Calculation } from '../../shared-calc/src/engine/index.js'
import { bothMet } from '../../shared-calc/src/formulas/uncertainty-joint.js'
import { powerLaw, recordBy, usual_Pa } from '../methods/record-by'
import { congruence } from './random-record'

/** Normal numbers by Box and Muller from the tests' own congruence. */
function normals(seed: number): () => number {
  const even = congruence(seed)
  return () => Math.sqrt(-2 * Math.log(even())) * Math.cos(2 * Math.PI * even())
}

const record = (
  target: unknown,
  factor = 1,
  change: { readonly [part: string]: unknown } = {},
): TestRecord => {
  const base = recordBy('iso-9972:2015', powerLaw(80, 0.65, usual_Pa), {
    uncertainty: { flowCalibration_relative: 0.012, pressureReading_Pa: 0.6, volume_relative: 0.02 },
    target,
    ...change,
  })
  const runs = base.runs.map((run, i) => ({
    ...run,
    readings: run.readings.map(({ pressure_Pa, flow_m3_h = 0 }) => ({
      pressure_Pa,
      flow_m3_h: i === 0 ? flow_m3_h : flow_m3_h * factor,
    })),
  }))
  return { ...base, runs }
}

/** Share of draws of all causes in which every one of some figures meets its limit. */
function drawn(
  evaluation: Evaluation,
  limits: readonly { readonly label: string; readonly limit: number }[],
): number {
  const figures = limits.map(({ label, limit }) => {
    const figure = evaluation.uncertainty?.figures.find((one) => one.label === label)
    if (!figure) throw new Error(`no budget of ${label}`)
    return { ...figure, room: Math.log(limit / figure.value) - figure.expectedCorrection }
  })
  const ids = [...new Set(figures.flatMap(({ contributions }) => contributions.map(({ id }) => id)))]
  const effects = figures.map(({ contributions }) =>
    ids.map((id) => {
      const one = contributions.find((candidate) => candidate.id === id)
      return one ? one.sensitivity * one.standardUncertainty : 0
    }),
  )
  const normal = normals(77)
  const DRAWS = 60_000
  let met = 0
  for (let i = 0; i < DRAWS; i += 1) {
    const errors = ids.map(normal)
    const all = figures.every(
      ({ room }, f) => errors.reduce((sum, error, k) => sum + error * (effects[f]?.[k] ?? 0), 0) <= room,
    )
    if (all) met += 1
  }
  return met / DRAWS
}

describe('the probability that two limits are both met', () => {
  const both = (P_1: number, P_2: number, rho: number) => {
    // Simpson's places, another rule than the project's.
    const COUNT = 2001
    const t = Array.from({ length: COUNT }, (_, i) => i / (COUNT - 1))
    const w = t.map((_, i) => (i === 0 || i === COUNT - 1 ? 1 : i % 2 === 1 ? 4 : 2) / (3 * (COUNT - 1)))
    const column = (values: readonly number[]) => ({
      values,
      origin: () => ({ kind: 'rule', reason: 'test' }) as const,
    })
    return new Calculation()
      .add('both', 'both', bothMet, {
        P_1: byRule(P_1, 'test'),
        P_2: byRule(P_2, 'test'),
        rho: byRule(rho, 'test'),
        t: column(t),
        w: column(w),
      })
      .value('P_b')
  }

  it.each([-0.9, -0.5, 0, 0.3, 0.7, 0.95])(
    'is ¼ + arcsin ρ/2π at the middle of both, ρ = %s (Sheppard)',
    (rho) => {
      expect(both(0.5, 0.5, rho)).toBeCloseTo(0.25 + Math.asin(rho) / (2 * Math.PI), 9)
    },
  )

  it('is the product where nothing is shared, and the smaller where all is', () => {
    expect(both(0.8, 0.6, 0)).toBeCloseTo(0.48, 12)
    expect(both(0.8, 0.6, 0.999)).toBeCloseTo(0.6, 3)
  })
})

describe('a target that each direction must meet', () => {
  const limit = ((80 * 50 ** 0.65) / 500) * 1.006

  it.each([1, 0.995])(
    'is met with the probability that both do; second direction %s times the first',
    (factor) => {
      const target = { quantity: 'n50', limit, directions: 'each' } as const
      const evaluation = evaluate(record(target, factor))
      const labels = evaluation.uncertainty?.figures.map(({ label }) => label) ?? []
      const judged = labels.filter((label) => label.startsWith('n50') && label !== 'n50')
      expect(judged).toHaveLength(2)
      const [decision] = evaluation.decision ?? []
      const found = drawn(
        evaluation,
        judged.map((label) => ({ label, limit })),
      )
      expect(decision?.probability).toBeCloseTo(found, 1.8)
      const alone =
        evaluate(record({ ...target, directions: 'mean' }, factor)).decision?.[0]?.probability ?? 0
      expect(decision?.probability).toBeLessThan(alone - 0.02)
    },
  )

  it('shares the accepted risk out: half of it for each of two directions', () => {
    const [decision] = evaluate(record({ quantity: 'n50', limit, directions: 'each' })).decision ?? []
    const [whole] = evaluate(record({ quantity: 'n50', limit, directions: 'mean' })).decision ?? []
    expect(decision?.acceptanceLimit).toBeLessThan(whole?.acceptanceLimit ?? 0)
  })
})

describe('a target of several limits', () => {
  // Preset with a limit per volume and one per envelope area above 4,000 m³.
  const large = (directions: 'mean' | 'each') => {
    const building = {
      name: 'invented hall',
      volume_m3: 5000,
      volumeBasis: 'net',
      envelopeArea_m2: 5000,
      height_m: 5,
    }
    const base = record({ preset: 'passive-house-new', directions }, 0.998, { building })
    const scale = (0.596 * 5000) / (80 * 50 ** 0.65)
    return {
      ...base,
      runs: base.runs.map((run) => ({
        ...run,
        readings: run.readings.map(({ pressure_Pa, flow_m3_h = 0 }) => ({
          pressure_Pa,
          flow_m3_h: flow_m3_h * scale,
        })),
      })),
    }
  }

  it.each(['mean', 'each'] as const)(
    'says with what probability all are met, by the %s of the directions',
    (directions) => {
      const evaluation = evaluate(large(directions))
      const decisions = evaluation.decision ?? []
      expect(decisions.length).toBe(2)
      const [first] = decisions
      const all = first?.allLimitsProbability ?? Number.NaN
      for (const { probability } of decisions) expect(all).toBeLessThan(probability)
      const limits = (evaluation.uncertainty?.figures ?? [])
        .filter(({ quantity }) => quantity === 'n50' || quantity === 'qE50')
        .filter(({ label }) => directions === 'mean' || label.includes(' '))
        .map(({ label }) => ({ label, limit: 0.6 }))
      expect(limits).toHaveLength(directions === 'mean' ? 2 : 4)
      expect(Math.abs(all - drawn(evaluation, limits))).toBeLessThan(0.015)
      expect(first?.words).toMatch(/all limits together/)
    },
  )
})
