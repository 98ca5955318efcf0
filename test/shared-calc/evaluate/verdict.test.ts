import { evaluate, InputError, type TestRecord } from '@draughtbook/shared-calc'
import { describe, expect, it } from 'vitest'
import { PRESSURES, powerLaw, recordWith, run } from '../support/records'

/** A test whose q50 is 500 m³/h depressurised and this much pressurised; volume 500 m³, so n50 is q50/500. */
const twoSided = (
  pressurised: number,
  change: (record: TestRecord) => void,
  depressurised = 500,
): TestRecord =>
  recordWith((record) => {
    for (const [i, q50] of [depressurised, pressurised].entries())
      run(record, i).readings = powerLaw(
        PRESSURES.map((pressure) => (i === 0 ? -pressure : pressure)),
        q50 / 50 ** 0.65,
        0.65,
      )
    change(record)
  })
const own = (target: object) => (record: TestRecord) => {
  record.target = { quantity: 'n50', limit: 1, volumeBasis: 'net', ...target }
}

describe('directions that a target counts', () => {
  it.each([
    ['mean', 'mean', 1.05, 'misses'],
    ['each', 'worse direction', 1.1, 'misses'],
    ['any', 'mean', 1.05, 'misses'],
  ] as const)('"%s" judges the %s of two runs', (directions, judged, value, outcome) => {
    const { verdict } = evaluate(twoSided(550, own({ directions })))
    expect(verdict.value).toBeCloseTo(value, 10)
    expect(verdict.criteria[0]?.judged).toBe(judged)
    expect(verdict.outcome).toBe(outcome)
  })

  it('"mean" meets a limit that one direction alone would miss, "each" does not', () => {
    expect(evaluate(twoSided(490, own({ limit: 0.995, directions: 'mean' }))).verdict.outcome).toBe('meets')
    expect(evaluate(twoSided(490, own({ limit: 0.995, directions: 'each' }))).verdict.outcome).toBe('misses')
  })

  it('"any" takes one run as it is', () => {
    const { verdict } = evaluate(
      twoSided(550, (record) => {
        own({ directions: 'any' })(record)
        record.runs.pop()
      }),
    )
    expect(verdict.value).toBeCloseTo(1, 10)
    expect(verdict.criteria[0]?.judged).toBe('one direction')
  })

  it('may be changed for a preset', () => {
    const { verdict } = evaluate(
      twoSided(250, (record) => {
        record.target = { preset: 'passive-house-retrofit', directions: 'each' }
      }),
    )
    expect(verdict.target?.directions).toBe('each')
    expect(verdict.value).toBeCloseTo(1, 10)
  })

  it('averages flows, never coefficients or exponents', () => {
    const { results, runs } = evaluate(
      recordWith((record) => {
        run(record, 1).readings = powerLaw([60, 50, 40, 30, 20, 10], 30, 0.55)
      }),
    )
    for (const quantity of ['q50', 'q10', 'q4', 'ela4', 'ela10'] as const) {
      const [a, b] = runs.map((one) => one[quantity].value)
      expect(results[quantity].value).toBeCloseTo(((a ?? 0) + (b ?? 0)) / 2, 10)
    }
  })
})

describe('a rounding rule of a target', () => {
  const rounded = (limit: number, decimalPlaces?: number) =>
    evaluate(twoSided(500, own({ limit, ...(decimalPlaces !== undefined && { decimalPlaces }) }))).verdict

  it('is applied only where the target asks for it', () => {
    const q50 = (places?: number) =>
      evaluate(
        recordWith((record) => {
          for (const { readings } of record.runs)
            for (const reading of readings)
              reading.flow_m3_h = (302 / 50 ** 0.65) * Math.abs(reading.pressure_Pa) ** 0.65
          record.target = {
            quantity: 'n50',
            limit: 0.6,
            volumeBasis: 'net',
            ...(places !== undefined && { decimalPlaces: places }),
          }
        }),
      ).verdict
    // n50 = 302/500 = 0.604.
    expect(q50()).toMatchObject({ outcome: 'misses' })
    expect(q50(1)).toMatchObject({ outcome: 'meets', value: 0.6, margin: 0 })
    expect(q50(2)).toMatchObject({ outcome: 'meets', value: 0.6 })
    expect(q50(3)).toMatchObject({ outcome: 'misses', value: 0.604 })
    expect(q50(1).target?.decimalPlaces).toBe(1)
  })

  it('rounds halves up', () => {
    expect(rounded(1, 0).value).toBe(1)
    expect(rounded(0.9, 0)).toMatchObject({ outcome: 'misses', value: 1 })
  })

  // What is said to be left to seal is taken off the flow at 50 Pa of both directions.
  it.each([
    [0.53, 1],
    [0.5, 1],
    [0.87, 0],
    [0.617, 2],
    [0.7, 3],
  ])(
    'with a limit of %s compared to %s places, sealing what is left to seal just meets it',
    (limit, places) => {
      const houseOf = (flow: number) =>
        evaluate(twoSided(flow, own({ limit, decimalPlaces: places }), flow)).verdict
      const flow = 800
      const before = houseOf(flow)
      expect(before.outcome).toBe('misses')
      // Orifice law, C_d 0.61, reference air of 1.2041 kg/m³.
      const sealed = 3600 * 0.61 * ((before.leakageToSeal_cm2 ?? 0) / 1e4) * Math.sqrt((2 * 50) / 1.2041)
      expect(houseOf(flow - sealed * 1.0001).outcome).toBe('meets')
      expect(houseOf(flow - sealed * 0.9999).outcome).toBe('misses')
    },
  )
})

describe('the verdict', () => {
  it('is "not valid", with the numbers shown, whenever a finding invalidates', () => {
    const { verdict, findings } = evaluate(recordWith((record) => run(record).readings.splice(4)))
    expect(findings.some(({ severity }) => severity === 'invalidates')).toBe(true)
    expect(verdict.outcome).toBe('not valid')
    expect(verdict.value).toBeGreaterThan(0)
    expect(verdict.criteria[0]?.within).toBe(true)
  })

  it('is "no target" where none was set', () => {
    const { verdict } = evaluate(recordWith((record) => delete record.target))
    expect(verdict).toMatchObject({ outcome: 'no target', criteria: [], ageing: [] })
  })

  it('tells what the margin becomes after the published growth of leakage with age', () => {
    const { verdict } = evaluate(twoSided(500, own({ limit: 1.2 })))
    const [low, high] = verdict.ageing
    // +18 % (Moujalled et al. 2021) and +25 % (Ismaiel et al. 2022).
    expect(low?.value).toBeCloseTo(1.18, 10)
    expect(low?.margin).toBeCloseTo(0.02, 10)
    expect([low?.within, high?.within]).toEqual([true, false])
    expect(high?.margin).toBeCloseTo(-0.05, 10)
    expect([low?.source, high?.source].join()).toMatch(/Moujalled et al. 2021.*Ismaiel et al. 2022/)
  })

  it('gives the hole whose sealing would just meet the target: q = C_d·A·√(2Δp/ρ)', () => {
    const { verdict } = evaluate(twoSided(500, own({ limit: 0.8 })))
    const excess_m3_h = (1 - 0.8) * 500
    const area_m2 = excess_m3_h / 3600 / 0.61 / Math.sqrt((2 * 50) / 1.2041)
    expect(verdict.leakageToSeal_cm2).toBeCloseTo(area_m2 * 1e4, 8)
  })
})

describe('a target that the building cannot be judged by', () => {
  it.each([
    ['qE50', 'building.envelopeArea_m2', 'envelopeArea_m2'],
    ['qF50', 'building.floorArea_m2', 'floorArea_m2'],
  ] as const)('%s without its basis is an error at %s', (quantity, path, field) => {
    const record = recordWith((r) => {
      r.target = { quantity, limit: 1 }
      delete r.building[field]
    })
    const problems = [expect.objectContaining({ path })]
    expect(() => evaluate(record)).toThrow(expect.objectContaining({ name: 'InputError', problems }))
  })

  it('an unknown preset names those there are', () => {
    const record = recordWith((r) => {
      r.target = { preset: 'nowhere' }
    })
    expect(() => evaluate(record)).toThrow(InputError)
    expect(() => evaluate(record)).toThrow(
      /target\.preset: there is no target "nowhere"\. Known targets: .*england-2021/,
    )
  })

  it('a misspelt preset names the nearest first, and not all of them', () => {
    const record = recordWith((r) => {
      r.target = { preset: 'passvie-house-new' }
    })
    expect(() => evaluate(record)).toThrow(
      /did you mean passive-house-new\? Known targets: passive-house-new, passive-house-retrofit, (\S+, ){7}\S+ and \d+ others$/,
    )
  })

  it('an unknown method names those there are', () => {
    const record = recordWith((r) => {
      r.test.method = 'iso-1:1900'
    })
    expect(() => evaluate(record)).toThrow(
      /test\.method: there is no test method "iso-1:1900"\. Known methods: iso-9972:2015/,
    )
  })
})
