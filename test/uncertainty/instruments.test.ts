import { type Evaluation, evaluate, type TestRecord } from '@draughtbook/shared-calc'
import { describe, expect, it } from 'vitest'
import { simulate } from '../../shared-calc/src/assessment/simulation/simulate.js'
import { powerLaw, recordBy, usual_Pa } from '../methods/record-by'

const record = recordBy('iso-9972:2015', powerLaw(80, 0.62, usual_Pa), {
  format: 'draughtbook/record@3',
  uncertainty: {},
})
const figure = (evaluation: Evaluation, quantity: string) =>
  evaluation.uncertainty?.figures.find((one) => one.quantity === quantity)
const cause = (evaluation: Evaluation, quantity: string, id: string) =>
  figure(evaluation, quantity)?.contributions.find((one) => one.id === id)
const mean = (values: readonly number[]) => values.reduce((sum, one) => sum + one, 0) / values.length

/** Limits of error ±a spread evenly: a/√3, JCGM 100:2008, 4.3.7. */
const even = (limit: number) => limit / Math.sqrt(3)

describe('accuracies stated of the instruments', () => {
  const stated: TestRecord = {
    ...record,
    pressureGauge: { ...record.pressureGauge, accuracy_relative: 0.008 },
    flowDevice: { ...record.flowDevice, accuracy_relative: 0.03 },
    thermometer: { accuracy_K: 0.2 },
  }

  it.each([
    ['flow calibration', even(0.03)],
    ['gauge span', even(0.008)],
    ['indoor temperature', even(0.2)],
    ['outdoor temperature', even(0.2)],
  ])('%s: the stated accuracy over √3 is in the budget, and no default', (id, u) => {
    const evaluation = evaluate(stated)
    expect(cause(evaluation, 'q50', id)?.standardUncertainty).toBeCloseTo(u, 12)
    const input = cause(evaluation, 'q50', id)?.input
    expect(evaluation.uncertainty?.defaults.map((one) => one.input)).not.toContain(input)
    expect(evaluate(record).uncertainty?.defaults.map((one) => one.input)).toContain(input)
  })

  it('give way to what the record says of the uncertainty itself', () => {
    const evaluation = evaluate({ ...stated, uncertainty: { flowCalibration_relative: 0.011 } })
    expect(cause(evaluation, 'q50', 'flow calibration')?.standardUncertainty).toBe(0.011)
  })

  it('count as a share of the mean reading where they are in the unit of the readings, the larger of the two', () => {
    const flows = record.runs.flatMap(({ readings }) => readings.map((one) => one.flow_m3_h ?? Number.NaN))
    const of = (accuracy_m3_h: number) =>
      cause(
        evaluate({ ...stated, flowDevice: { ...stated.flowDevice, accuracy_m3_h } }),
        'q50',
        'flow calibration',
      )?.standardUncertainty
    expect(of(60)).toBeCloseTo(even(60 / mean(flows)), 9)
    expect(of(1)).toBeCloseTo(even(0.03), 12)
  })

  it('narrow the interval where the instruments are better than the defaults', () => {
    const width = (evaluation: Evaluation) => figure(evaluation, 'q50')?.relativeStandardUncertainty ?? 0
    expect(width(evaluate(stated))).toBeLessThan(width(evaluate(record)))
  })
})

describe('a flow device with several ranges', () => {
  /** Readings below this pressure are in the small range. */
  const CHANGE_Pa = 30
  const ranged = (factor = 1): TestRecord => ({
    ...record,
    runs: record.runs.map((run) => ({
      ...run,
      readings: run.readings.map((one) =>
        Math.abs(one.pressure_Pa) < CHANGE_Pa
          ? { ...one, range: 'small', flow_m3_h: (one.flow_m3_h ?? Number.NaN) * factor }
          : { ...one, range: 'large' },
      ),
    })),
  })

  it.each(['q50', 'ela4', 'ela10'] as const)(
    'the budget of %s holds what a step between the ranges does to it',
    (quantity) => {
      const at = (h: number) => Math.log(evaluate(ranged(1 + h)).results[quantity].value)
      const slope = (at(1e-4) - at(-1e-4)) / 2e-4
      expect(cause(evaluate(ranged()), quantity, 'range step')?.sensitivity).toBeCloseTo(slope, 5)
    },
  )

  it('matters little at 50 Pa and much at 4 Pa', () => {
    const evaluation = evaluate(ranged())
    expect(cause(evaluation, 'q50', 'range step')?.contribution).toBeLessThan(0.01)
    expect(cause(evaluation, 'ela4', 'range step')?.contribution).toBeGreaterThan(0.02)
  })

  it('takes a step as the record says it', () => {
    const evaluation = evaluate({ ...ranged(), uncertainty: { rangeStep_relative: 0.005 } })
    expect(cause(evaluation, 'ela4', 'range step')?.standardUncertainty).toBe(0.005)
  })

  it('is drawn in the simulation as it is counted in the budget', () => {
    const evaluation = evaluate({ ...ranged(), uncertainty: { rangeStep_relative: 0.04 } })
    const steps = simulate(
      { ...ranged(), uncertainty: { rangeStep_relative: 0.04 } },
      { draws: 20_000, seed: 7 },
    )
    let step = steps.next()
    while (!step.done) step = steps.next()
    const drawn = step.value.find(({ quantity }) => quantity === 'ela4')
    const budget = figure(evaluation, 'ela4')
    const ratio =
      (drawn?.relativeStandardUncertainty ?? Number.NaN) / (budget?.relativeStandardUncertainty ?? Number.NaN)
    expect(ratio).toBeGreaterThan(0.97)
    expect(ratio).toBeLessThan(1.03)
  })

  it('has no step where one range served, or where nobody said which', () => {
    expect(cause(evaluate(record), 'ela4', 'range step')).toBeUndefined()
    const one = ranged()
    for (const reading of one.runs.flatMap(({ readings }) => readings)) reading.range = 'large'
    expect(cause(evaluate(one), 'ela4', 'range step')).toBeUndefined()
  })
})
