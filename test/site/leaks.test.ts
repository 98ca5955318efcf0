import { evaluate, type LeakLog, parseRecord, reportLeaks } from '@draughtbook/shared-calc'
import { describe, expect, it } from 'vitest'
import { exampleRecord } from './support/example-record.js'

const pressurisation = {
  direction: 'pressurisation' as const,
  averagingTime_s: 20,
  zeroFlowBefore_Pa: [1.2, 1.1, 1.3],
  zeroFlowAfter_Pa: [0.8, 0.9, 0.7],
  readings: exampleRecord.runs[0]?.readings.map(({ pressure_Pa, flow_m3_h }) => ({
    pressure_Pa: -pressure_Pa + 2,
    flow_m3_h: flow_m3_h * 1.1,
  })),
}
const both = [exampleRecord.runs[0], pressurisation]
const withLeaks = (leaks: LeakLog, runs: unknown = both) =>
  parseRecord({ ...exampleRecord, format: 'draughtbook/record@2', runs, leaks })
const leak = (more: Partial<LeakLog['list'][number]> = {}): LeakLog['list'][number] => ({
  place: 'eaves',
  kind: 'wall to roof',
  fixed: false,
  ...more,
})
const areaOf = (size: NonNullable<LeakLog['list'][number]['size']>, count?: number) =>
  reportLeaks(withLeaks({ list: [leak({ size, ...(count !== undefined && { count }) })] })).leaks[0]?.area_cm2

/** Flow of a sharp-edged hole, m³/h: 0.61·A·√(2Δp/ρ), ρ 1.2041 kg/m³; the arithmetic of this test. */
const orifice = (area_cm2: number, pressure = 50) =>
  3600 * 0.61 * (area_cm2 / 10_000) * Math.sqrt((2 * pressure) / 1.2041)

describe('equivalent areas of leaks (elementary geometry)', () => {
  it.each([
    ['a round hole of 20 mm: π cm²', { diameter_mm: 20 }, undefined, Math.PI],
    ['"finger" is the same', { words: 'finger' as const }, undefined, Math.PI],
    ['a gap of 0.2 mm over 5 m: 10 cm²', { width_mm: 0.2, length_m: 5 }, undefined, 10],
    ['"hairline gap" of 5 m is the same', { words: 'hairline gap' as const, length_m: 5 }, undefined, 10],
    ['"card gap" of 1 m: 8 cm²', { words: 'card gap' as const, length_m: 1 }, undefined, 8],
    ['three holes of 4 cm²: 12 cm²', { area_cm2: 4 }, 3, 12],
  ])('%s', (_, size, count, expected) => {
    expect(areaOf(size, count)).toBeCloseTo(expected, 10)
  })

  it('carry what a sharp-edged hole carries at 50 Pa', () => {
    const [only] = reportLeaks(withLeaks({ list: [leak({ size: { area_cm2: 25 } })] })).leaks
    expect(only?.flow_m3_h).toBeCloseTo(orifice(25), 9)
  })
})

describe('what is left to seal', () => {
  const report = reportLeaks(withLeaks({ list: [] }))
  const { results } = evaluate(withLeaks({ list: [] }))

  it('the whole leakage as one hole carries the measured flow', () => {
    expect(report.wholeLeakage.flow_m3_h).toBeCloseTo(results.q50.value, 9)
    expect(orifice(report.wholeLeakage.hole.area_cm2)).toBeCloseTo(results.q50.value, 9)
  })

  it('a square and a round hole have the area given', () => {
    const { area_cm2, squareSide_mm, roundDiameter_mm } = report.wholeLeakage.hole
    expect((squareSide_mm / 10) ** 2).toBeCloseTo(area_cm2, 9)
    expect((Math.PI / 4) * (roundDiameter_mm / 10) ** 2).toBeCloseTo(area_cm2, 9)
  })

  it('is worked out at its own pressure where the target limits an area (NBC 2020, tier AL-5A: 0.29 cm²/m² at 10 Pa)', () => {
    const area_m2 = 320
    const record = parseRecord({
      ...exampleRecord,
      format: 'draughtbook/record@2',
      building: { ...exampleRecord.building, envelopeArea_m2: area_m2 },
      target: { preset: 'canada-al-5a' },
      leaks: { list: [] },
    })
    const [criterion] = evaluate(record).verdict.criteria ?? []
    expect(criterion?.quantity).toBe('aE10')
    const { toSeal } = reportLeaks(record)
    const holes = [0, 0.18, 0.25].map((growth) =>
      Math.max(0, ((criterion?.value ?? Number.NaN) - 0.29 / (1 + growth)) * area_m2),
    )
    expect(holes[0]).toBe(0)
    expect(holes[2]).toBeGreaterThan(0)
    for (const [i, hole] of holes.entries()) {
      expect(toSeal[i]?.hole.area_cm2).toBeCloseTo(hole, 9)
      // CAN/CGSB-149.10 takes 0.611 as discharge coefficient (value from memory).
      expect(toSeal[i]?.flow_m3_h).toBeCloseTo((orifice(hole, 10) * 0.611) / 0.61, 9)
    }
  })

  it('closing it brings the building to the limit, and with an allowance to the limit after ageing', () => {
    for (const { allowanceForAgeing, hole } of report.toSeal) {
      const left = results.q50.value - orifice(hole.area_cm2)
      expect((left / 320) * (1 + allowanceForAgeing)).toBeCloseTo(0.6, 9)
    }
    expect(report.toSeal.map(({ allowanceForAgeing }) => allowanceForAgeing)).toStrictEqual([0, 0.18, 0.25])
  })

  it('is nothing where the target is met', () => {
    const easy = parseRecord({
      ...exampleRecord,
      format: 'draughtbook/record@2',
      leaks: { list: [] },
      target: { quantity: 'n50', limit: 5, directions: 'any' },
    })
    expect(reportLeaks(easy).toSeal.map(({ hole }) => hole.area_cm2)).toStrictEqual([0, 0, 0])
  })
})

describe('repair rounds', () => {
  const log: LeakLog = {
    list: [leak({ fixed: true, fixedInRound: 1, size: { area_cm2: 40 } }), leak({ place: 'loft hatch' })],
    earlierTests: [
      { date: '2026-09-01', airLeakageRate50_m3_h: 420, directions: ['depressurisation', 'pressurisation'] },
      { date: '2026-09-20', airLeakageRate50_m3_h: 300, directions: ['depressurisation'] },
    ],
  }
  const report = reportLeaks(withLeaks(log))

  it('the first brought 420 − 300 m³/h, the hole closed carries that', () => {
    const [first] = report.rounds
    expect(first?.gain_m3_h).toBe(120)
    expect(first?.gainShare).toBeCloseTo(120 / 420, 12)
    expect(orifice(first?.hole.area_cm2 ?? 0)).toBeCloseTo(120, 9)
    expect(first?.loggedArea_cm2).toBe(40)
  })

  it('the last one ends at the present test', () => {
    const present = evaluate(withLeaks(log)).results.q50.value
    expect(report.rounds[1]?.gain_m3_h).toBeCloseTo(300 - present, 9)
  })

  it('tests of other directions are named, as part of the gain may be theirs', () => {
    const found = report.findings.filter(({ rule }) => rule === 'round-directions')
    expect(found.map(({ where }) => where[0])).toStrictEqual(['leaks.earlierTests[1].directions'])
  })

  it('a round in which leakage grew is a caution', () => {
    const grown = reportLeaks(
      withLeaks({ list: [], earlierTests: [{ date: '2026-09-01', airLeakageRate50_m3_h: 100 }] }),
    )
    expect(grown.findings.map(({ rule, severity }) => [rule, severity])).toContainEqual([
      'round-grew',
      'caution',
    ])
  })
})

describe('the directions', () => {
  it('the explanation lists what opens under the leakier one, and only names a leak that was seen there', () => {
    const words = reportLeaks(
      withLeaks({
        list: [leak({ place: 'hood flap', kind: 'device opening', seenUnder: 'pressurisation' })],
      }),
    ).directions
    expect(words[0]).toMatch(/^Under pressurisation the building leaks \d+ m³\/h more/)
    expect(words[1]).toContain('flaps of extract ducts and hoods, which open outwards')
    expect(words).toContain('Logged as leaking under pressurisation only: "hood flap".')
  })

  it('names no cause where none was seen', () => {
    const words = reportLeaks(withLeaks({ list: [leak()] })).directions
    expect(words).toContain(
      'No open leak in the log was seen under pressurisation only. Look for one before you name a cause.',
    )
  })

  it('says nothing of a difference where one direction was run', () => {
    expect(reportLeaks(withLeaks({ list: [] }, exampleRecord.runs)).directions).toStrictEqual([
      'Only one direction was measured, so the directions cannot be compared.',
    ])
  })
})

describe('findings of the leak log', () => {
  it('leaks larger than the whole leakage are named', () => {
    const found = reportLeaks(withLeaks({ list: [leak({ size: { area_cm2: 5000 } })] })).findings
    expect(found.map(({ rule }) => rule)).toContain('leaks-too-large')
  })

  it('leaks without a size are named', () => {
    const found = reportLeaks(withLeaks({ list: [leak(), leak({ place: 'sill' })] })).findings
    expect(found.map(({ message }) => message)).toContain(
      '2 leaks have no size and are not included in any area.',
    )
  })
})
