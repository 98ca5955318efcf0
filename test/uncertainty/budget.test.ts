import {
  changeBetween,
  Evaluation,
  evaluate,
  evaluateInput,
  parseRecord,
  type TestRecord,
} from '@draughtbook/shared-calc'
import { describe, expect, it } from 'vitest'
import { byRule, Calculation, type Column } from '../../shared-calc/src/engine/index.js'
import { conformity, uncertaintyBudget } from '../../shared-calc/src/formulas/uncertainty-budget.js'
import { powerLaw, recordBy, usual_Pa } from '../methods/record-by'
import { expectPrinted } from '../support/expect-printed'
import { randomRecord } from './random-record'

const column = (values: readonly number[]): Column => ({
  values: values,
  origin: () => ({ kind: 'rule', reason: 'test' }),
})
const given = (value: number) => byRule(value, 'test')

const figureOf = (evaluation: Evaluation, quantity: string) => {
  const figure = evaluation.uncertainty?.figures.find((candidate) => candidate.quantity === quantity)
  if (!figure) throw new Error(`no budget of ${quantity}`)
  return figure
}
const causeOf = (evaluation: Evaluation, quantity: string, id: string) =>
  figureOf(evaluation, quantity).contributions.find((contribution) => contribution.id === id)

/** A calm test of both directions, densities equal, everything the budget needs stated. */
const stated = {
  flowCalibration_relative: 0.02,
  flowReading_relative: 0.004,
  gaugeSpan_relative: 0.005,
  pressureReading_Pa: 0.1,
  zeroFlow_Pa: 0.05,
  windShift: 0.06,
  windSpread: 0.3,
  stackShift: 0.08,
  stackSpread: 0.1,
  leakExponentSpread: 0.07,
  zeroFlowWind: 0.1,
  indoorTemperature_K: 0.3,
  outdoorTemperature_K: 0.3,
  barometricPressure_Pa: 100,
  relativeHumidity: 0.05,
  volume_relative: 0.03,
  envelopeArea_relative: 0.025,
  floorArea_relative: 0.02,
  otherDirection_relative: 0.03,
  acceptedRisk: 0.05,
}
const calm = (change: { readonly [part: string]: unknown } = {}, exponent = 0.65) =>
  recordBy('iso-9972:2015', powerLaw(80, exponent, usual_Pa), { uncertainty: stated, ...change })

describe('the chapter of a budget', () => {
  it('combines as JCGM 100:2008, H.1, does: 32 nm with 16 effective degrees of freedom (values from memory)', () => {
    // Standard uncertainties in nm: reference gauge, difference, expansion, temperature; their degrees of freedom.
    const u = [25, 9.7, 2.9, 16.6]
    const dof = [18, 25.6, 50, 2]
    const block = new Calculation().add('budget', 'budget', uncertaintyBudget, {
      v: given(1),
      c: column(u.map(() => 1)),
      u: column(u),
      a: column(u.map(() => 0)),
      r: column(u.map((value, i) => value ** 4 / (dof[i] ?? 1))),
    })
    expectPrinted(block.value('u_c'), '32')
    expect(block.value('nu_e')).toBe(16)
    // Table G.2 of the same guide: t for 95 % and 16 degrees of freedom is 2.12.
    expectPrinted(block.value('k'), '2.12')
  })

  it('has shares that come to one', () => {
    for (const { contributions } of evaluate(parseRecord(randomRecord(7))).uncertainty?.figures ?? [])
      expect(contributions.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 12)
  })
})

describe('the chapter of a decision', () => {
  const decided = (v: number, u: number, nu = 1e6, risk = 0.05) =>
    new Calculation().add('decision', 'decision', conformity, {
      v: given(v),
      L: given(1),
      u_c: given(u),
      b: given(0),
      nu_e: given(nu),
      r_a: given(risk),
      N_m: given(1),
    })

  it.each([
    [1.645, '0.950'],
    [1.96, '0.975'],
    [0, '0.500'],
    [-1, '0.159'],
  ])('gives the normal table’s probability for %s standard uncertainties to the limit', (z, printed) => {
    expectPrinted(decided(Math.exp(-z * 0.02), 0.02).value('P_m'), printed)
  })

  it('guards by 1.645 standard uncertainties for a risk of 5 %, and by Student’s 2.015 with 5 degrees of freedom', () => {
    expectPrinted(-Math.log(decided(1, 0.02).value('L_a')) / 0.02, '1.645')
    expectPrinted(-Math.log(decided(1, 0.02, 5).value('L_a')) / 0.02, '2.015')
  })
})

describe('the budget of a test', () => {
  it('counts the flow calibration once, however many readings and directions there are', () => {
    const both = evaluate(calm())
    const one = evaluate(calm({ runs: calm().runs.slice(0, 1) }))
    expect(causeOf(both, 'q50', 'flow calibration')?.contribution).toBeCloseTo(0.02, 12)
    expect(causeOf(one, 'q50', 'flow calibration')?.contribution).toBeCloseTo(0.02, 12)
  })

  it('carries an error of the gauge’s span with the exponent', () => {
    // q = C·Δp^n: pressures 1 % too high make the flow at a true pressure n % too low.
    expect(causeOf(evaluate(calm()), 'q50', 'gauge span')?.sensitivity).toBeCloseTo(-0.65, 10)
  })

  it('lets a shift of the mean pressure by wind cancel between the directions, and not in one', () => {
    const windy = { ...calm().conditions, windSpeed_m_s: 5 }
    const both = causeOf(evaluate(calm({ conditions: windy })), 'q50', 'wind shift')
    const one = causeOf(
      evaluate(calm({ conditions: windy, runs: calm().runs.slice(0, 1) })),
      'q50',
      'wind shift',
    )
    // Published: about 3 % at 50 Pa at 6 m/s; here (5/6)² of it, as an even spread over √3.
    expect(one?.contribution).toBeGreaterThan(0.005)
    expect(one?.contribution).toBeLessThan(0.025)
    expect(both?.contribution ?? 1).toBeLessThan((one?.contribution ?? 0) / 20)
  })

  it('adds the volume to n50 and the area to qE50 by their squares', () => {
    const evaluation = evaluate(calm())
    const [q, n, e] = ['q50', 'n50', 'qE50'].map(
      (name) => figureOf(evaluation, name).relativeStandardUncertainty,
    )
    expect(n).toBeCloseTo(Math.hypot(q ?? 0, 0.03), 12)
    expect(e).toBeCloseTo(Math.hypot(q ?? 0, 0.025), 12)
  })

  it('takes the uncertainty of the volume from the building where none is stated beside it', () => {
    const { volume_relative: _, ...rest } = stated
    const building = { ...calm().building, volumeUncertainty_m3: 20 }
    const row = causeOf(evaluate(calm({ building, uncertainty: rest })), 'n50', 'internal volume')
    expect(row?.standardUncertainty).toBeCloseTo(20 / 500, 12)
  })

  it('counts the scatter of the readings once: what was found beyond what was expected', () => {
    const scatter = (noise: number, expected: number) => {
      const readings = powerLaw(80, 0.65, usual_Pa).map((reading, i) => ({
        ...reading,
        flow_m3_h: reading.flow_m3_h * (1 + noise * (i % 3 === 0 ? 1.2 : -0.6)),
      }))
      const record = recordBy('iso-9972:2015', readings, {
        uncertainty: { ...stated, flowReading_relative: expected, pressureReading_Pa: 0 },
      })
      return causeOf(evaluate(record), 'q50', 'scatter 1')?.standardUncertainty ?? Number.NaN
    }
    const exact = scatter(0, 0.02)
    expect(scatter(0, 0.01)).toBeCloseTo(exact / 2, 10)
    const rough = scatter(0.05, 0)
    expect(scatter(0.05, 0.001)).toBeCloseTo(rough, 4)
    expect(scatter(0.05, 0.02)).toBeLessThan(Math.hypot(rough, exact))
    expect(scatter(0.05, 0.02)).toBeGreaterThan(exact)
  })

  it('widens with the change of the zero-flow pressure, most at low pressure', () => {
    const drifting = calm().runs.map((run) => ({
      ...run,
      zeroFlowBefore_Pa: (run.zeroFlowBefore_Pa ?? []).map(() => 0.8),
      zeroFlowAfter_Pa: (run.zeroFlowAfter_Pa ?? []).map(() => -0.8),
    }))
    const [still, moved] = [evaluate(calm()), evaluate(calm({ runs: drifting }))]
    const width = (evaluation: Evaluation, name: string) =>
      figureOf(evaluation, name).relativeStandardUncertainty
    expect(width(moved, 'ela4') / width(still, 'ela4')).toBeGreaterThan(
      width(moved, 'q50') / width(still, 'q50'),
    )
    // Two changes of 1.6 Pa are two estimates 0.8 Pa of the deviation of a mean of two; wind of 1 m/s counts as four.
    const wind = 0.1 * 0.5 * 1.2041
    const pooled = (4 * wind ** 2 + 2 * 0.8 ** 2) / 6
    expect(causeOf(moved, 'ela4', 'zero flow 1')?.standardUncertainty).toBeCloseTo(
      Math.sqrt(pooled + 0.05 ** 2),
      10,
    )
  })

  it('does not multiply by 12.7 where one run shows one change of its zero-flow pressure', () => {
    const [run] = calm().runs
    const drifting = { ...run, zeroFlowBefore_Pa: Array(10).fill(1), zeroFlowAfter_Pa: Array(10).fill(-1) }
    const { coverageFactor } = figureOf(evaluate(calm({ runs: [drifting] })), 'ela4')
    // Student's t for 95 %: 2.571 with five degrees of freedom (four and one run).
    expect(coverageFactor).toBeLessThan(2.5706)
    expect(coverageFactor).toBeGreaterThan(1.95)
  })

  it('adds what the missing direction may bring where the target asks for both, not where one is enough', () => {
    const runs = calm().runs.slice(0, 1)
    const asks = evaluate(calm({ runs, target: { quantity: 'n50', limit: 3, directions: 'mean' } }))
    const enough = evaluate(calm({ runs, target: { quantity: 'n50', limit: 3, directions: 'any' } }))
    expect(causeOf(asks, 'q50', 'other direction')?.contribution).toBeCloseTo(0.03, 12)
    expect(causeOf(enough, 'q50', 'other direction')).toBeUndefined()
  })

  it('judges the worse direction by its own budget where each must meet the limit', () => {
    const runs = calm().runs.map((run, i) => ({
      ...run,
      readings: run.readings.map(({ pressure_Pa, flow_m3_h = 0 }) => ({
        pressure_Pa,
        flow_m3_h: flow_m3_h * (1 + 0.1 * i),
      })),
    }))
    const evaluation = evaluate(calm({ runs, target: { quantity: 'n50', limit: 3, directions: 'each' } }))
    const judged = evaluation.uncertainty?.figures.find(({ label }) => label === 'n50 as judged')
    expect(judged?.value).toBeCloseTo(evaluation.runs[1]?.n50?.value ?? Number.NaN, 12)
    expect(judged?.contributions.map(({ id }) => id)).not.toContain('scatter 1')
  })

  it('names every default in one note, with what is from memory, and none where all is stated', () => {
    const note = (record: TestRecord) =>
      evaluate(record, { uncertainty: true }).findings.find(({ rule }) => rule === 'assumed-uncertainty')
    const taken = note(calm({ uncertainty: {} }))
    expect(taken?.severity).toBe('note')
    expect(taken?.where).toContain('uncertainty.flowCalibration_relative')
    expect(taken?.provenance).toMatch(/value from memory: .*flow calibration/)
    expect(note(calm())).toBeUndefined()
  })

  it('takes wind at a meteorological station for half of it at the house, and says so', () => {
    const shift = (windAt: string) =>
      evaluate(calm({ conditions: { ...calm().conditions, windSpeed_m_s: 4, windAt } }))
    const [ground, station] = [shift('ground'), shift('meteorological')]
    const uncertainty = (evaluation: Evaluation) =>
      causeOf(evaluation, 'ela4', 'wind shift')?.standardUncertainty ?? Number.NaN
    expect(uncertainty(ground)).toBeCloseTo(0.06 * 0.5 * 1.2041 * 16, 10)
    expect(uncertainty(station)).toBeCloseTo(0.06 * 0.5 * 1.2041 * 4, 10)
    const said = (evaluation: Evaluation) =>
      evaluation.findings.find(({ rule }) => rule === 'wind-at-station')?.message
    expect(said(station)).toMatch(/4 m\/s .* 2 m\/s at the house/)
    expect(said(ground)).toBeUndefined()
  })

  it('says so with a note where the height was not logged, and works with 6 m', () => {
    const cold = { ...calm().conditions, outdoorTemperature_C: 0 }
    const { height_m: _, ...building } = calm().building
    const [assumed, logged] = [
      evaluate(calm({ building, conditions: cold })),
      evaluate(calm({ building: { ...building, height_m: 6 }, conditions: cold })),
    ]
    expect(assumed.findings.find(({ rule }) => rule === 'assumed-height')?.severity).toBe('note')
    expect(logged.findings.map(({ rule }) => rule)).not.toContain('assumed-height')
    expect(figureOf(assumed, 'ela4').contributions).toEqual(figureOf(logged, 'ela4').contributions)
    // Dry air at standard pressure, ideal gas: 0.08·(ρ(0 °C) − ρ(20 °C))·g·6 m.
    const density = (celsius: number) => 101_325 / (287.055 * (celsius + 273.15))
    expect(causeOf(assumed, 'ela4', 'stack shift')?.standardUncertainty).toBeCloseTo(
      0.08 * (density(0) - density(20)) * 9.80665 * 6,
      6,
    )
  })

  it('says so with a caution where wind was not logged, and works with 3 m/s', () => {
    const { windSpeed_m_s: _, windAt: __, ...conditions } = calm().conditions
    const evaluation = evaluate(calm({ conditions }))
    expect(evaluation.findings.find(({ rule }) => rule === 'assumed-wind')?.severity).toBe('caution')
    const row = causeOf(evaluation, 'q50', 'wind shift')
    expect(row?.standardUncertainty).toBeCloseTo(0.06 * 0.5 * 1.2041 * 9, 10)
  })
})

describe('asking for it', () => {
  it('changes nothing of the evaluation but what it adds', () => {
    const record = recordBy('iso-9972:2015', powerLaw(80, 0.65, usual_Pa), {
      target: { quantity: 'n50', limit: 3 },
    })
    const plain = evaluate(record)
    const { uncertainty, fits, decision, findings, ...rest } = evaluate(record, { uncertainty: true })
    const { findings: before, ...same } = plain
    expect(rest).toEqual(same)
    expect(
      findings.filter(
        ({ rule }) => !/^(assumed-uncertainty|assumed-wind|assumed-height|scatter-unexpected)$/.test(rule),
      ),
    ).toEqual(before)
    expect(uncertainty && fits && decision).toBeDefined()
    expect(plain).not.toHaveProperty('uncertainty')
    expect(Evaluation.parse(evaluate(record, { uncertainty: true }))).toBeDefined()
  })

  it('refuses an uncertainty part in a record@1, and fields it does not know', () => {
    expect(() => evaluateInput({ ...calm(), format: 'draughtbook/record@1' })).toThrow(
      /uncertainty is a field of draughtbook\/record@2/,
    )
    expect(() => evaluateInput({ ...calm(), uncertainty: { flow: 1 } })).toThrow(
      /uncertainty\.flow: unknown field/,
    )
  })
})

describe('the words of a decision', () => {
  const words = (limit: number, change: { readonly [part: string]: unknown } = {}) =>
    evaluate(calm({ target: { quantity: 'n50', limit }, ...change })).decision?.[0]?.words ?? ''
  const n50 = (80 * 50 ** 0.65) / 500

  it('say meets or misses as the verdict does, with how sure that is', () => {
    expect(words(n50 * 1.5)).toBe('meets; probability of meeting the target: more than 99 %')
    expect(words(n50 / 1.5)).toBe('fails; probability of meeting the target: less than 1 %')
    expect(words(n50 * 1.02)).toMatch(
      /^meets; probability of meeting the target: 7\d %\. For a risk of at most 5 %, the value must not exceed/,
    )
    expect(words(n50 / 1.02)).toMatch(/^fails; probability of meeting the target: 2\d %$/)
  })

  it('say nothing of the target where the test is not valid', () => {
    const runs = calm().runs.map((run) => ({ ...run, readings: run.readings.slice(0, 4) }))
    expect(words(n50 * 1.5, { runs })).toMatch(/^not valid: /)
  })
})

describe('the change between two tests of one house', () => {
  const instruments = {
    flowDevice: { serial: 'D', calibrationDue: '2027-01-01' },
    pressureGauge: { serial: 'G', calibrationDue: '2027-01-01' },
  }
  const test = (coefficient: number, change: { readonly [part: string]: unknown } = {}) =>
    recordBy('iso-9972:2015', powerLaw(coefficient, 0.65, usual_Pa), {
      uncertainty: stated,
      ...instruments,
      ...change,
    })

  it('leaves out what both share: calibration of the same device, span of the same gauge, volume', () => {
    const same = changeBetween(test(80), test(72), 'n50')
    const other = changeBetween(
      test(80),
      test(72, { flowDevice: { serial: 'E', calibrationDue: '2027-01-01' } }),
      'n50',
    )
    expect(same.shared).toEqual(['flow calibration', 'pressure gauge', 'internal volume'])
    expect(same.change).toBeCloseTo(-0.1, 10)
    // Another device brings both calibrations in full: √2 · 2 %.
    expect(other.standardUncertainty ** 2 - same.standardUncertainty ** 2).toBeCloseTo(2 * 0.02 ** 2, 8)
    expect(same.words).toBe('leakage fell by 10 % (probability of a real decrease: more than 99 %)')
  })

  it('says when the uncertainty can explain a change', () => {
    const slight = changeBetween(test(80), test(79.9), 'q50')
    expect(slight.words).toMatch(/within the uncertainty of the two tests/)
    expect(slight.interval95[0]).toBeLessThan(0)
    expect(slight.interval95[1]).toBeGreaterThan(0)
  })
})
