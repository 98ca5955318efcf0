import { evaluate, type TestRecord, targetPresets } from '@draughtbook/shared-calc'
import { describe, expect, it } from 'vitest'
import { recordWith } from '../support/records'

type Quantity = 'n50' | 'qE50' | 'qE_pr'
type Row = readonly [
  preset: string,
  quantity: Quantity,
  limit: number,
  pressure: number,
  directions: string,
  volume: number,
]

// Calculation reference, section 3: limits read in the codes named there, but for q_E50 of large passive houses (memory).
const TABLE: readonly Row[] = [
  ['passive-house-new', 'n50', 0.6, 50, 'mean', 500],
  ['passive-house-retrofit', 'n50', 1, 50, 'mean', 500],
  ['england-2021', 'qE50', 8, 50, 'any', 500],
  ['england-before-2021', 'qE50', 10, 50, 'any', 500],
  ['ireland-2019', 'qE50', 5, 50, 'any', 500],
  ['germany-without-ventilation', 'n50', 3, 50, 'each', 1500],
  ['germany-with-ventilation', 'n50', 1.5, 50, 'each', 1500],
  ['germany-without-ventilation', 'qE50', 4.5, 50, 'each', 1500.1],
  ['germany-with-ventilation', 'qE50', 2.5, 50, 'each', 1500.1],
  ['france-house', 'qE_pr', 0.6, 4, 'any', 500],
  ['france-flats', 'qE_pr', 1, 4, 'any', 500],
  ['us-zones-1-2', 'n50', 5, 50, 'any', 500],
  ['us-zones-3-8', 'n50', 3, 50, 'any', 500],
]

/** A test whose judged quantity is this share of the limit. */
function testAt(share: number, [preset, quantity, limit, pressure, , volume]: Row): TestRecord {
  return recordWith((record) => {
    const { building } = record
    building.volume_m3 = volume
    record.target = { preset }
    const basis = quantity === 'n50' ? volume : (building.envelopeArea_m2 ?? Number.NaN)
    const coefficient = (share * limit * basis) / pressure ** 0.65
    for (const { readings } of record.runs)
      for (const reading of readings) reading.flow_m3_h = coefficient * Math.abs(reading.pressure_Pa) ** 0.65
  })
}

describe.each(TABLE)('target %s, %s ≤ %d at %d Pa, directions: %s, %d m³', (...row) => {
  const [preset, quantity, limit, referencePressure_Pa, directions] = row

  it('is judged by that quantity and limit', () => {
    const { verdict } = evaluate(testAt(0.9, row))
    expect(verdict.target).toMatchObject({ preset, quantity, limit, referencePressure_Pa, directions })
    expect(verdict.criteria[0]).toMatchObject({ quantity, limit, referencePressure_Pa })
    expect(verdict.value).toBeCloseTo(0.9 * limit, 10)
    expect(verdict.margin).toBeCloseTo(0.1 * limit, 10)
  })

  it('is met just below its limit and missed just above', () => {
    const below = evaluate(testAt(1 - 1e-9, row)).verdict
    const above = evaluate(testAt(1 + 1e-9, row)).verdict
    expect([below.outcome, above.outcome]).toEqual(['meets', 'misses'])
    expect(below.leakageToSeal_cm2).toBe(0)
    expect(above.leakageToSeal_cm2).toBeGreaterThan(0)
  })
})

describe('the list of targets', () => {
  it('holds no preset that is not checked here', () => {
    expect([...new Set(TABLE.map(([preset]) => preset))].sort()).toEqual(
      targetPresets.map(({ id }) => id).sort(),
    )
  })
})

describe('a passive house from 4 000 m³ on', () => {
  const large = (volume: number, qE50: number) =>
    evaluate(
      recordWith((record) => {
        record.building.volume_m3 = volume
        record.building.envelopeArea_m2 = 2000
        for (const { readings } of record.runs)
          for (const reading of readings)
            reading.flow_m3_h = ((qE50 * 2000) / 50 ** 0.65) * Math.abs(reading.pressure_Pa) ** 0.65
      }),
    ).verdict

  it('must also meet q_E50 ≤ 0.6 m³/(h·m²) (value from memory)', () => {
    const { outcome, criteria } = large(4000, 0.61)
    expect(outcome).toBe('misses')
    expect(criteria.map(({ quantity, within }) => [quantity, within])).toEqual([
      ['n50', true],
      ['qE50', false],
    ])
    expect(large(4000, 0.59).outcome).toBe('meets')
  })

  it('need not below that', () => {
    const { outcome, criteria } = large(3999.9, 0.61)
    expect([outcome, criteria.length]).toEqual(['meets', 1])
  })
})
