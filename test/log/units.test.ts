import { findUnit, RECORD_UNITS, toRecordUnit } from '@draughtbook/shared-calc/log'
import { describe, expect, it } from 'vitest'
import { expectPrinted } from '../support/expect-printed'

/** Factors to the record's unit as printed in NIST SP 811 (2008), appendix B.8; flows times 3600. */
const PUBLISHED: [spelling: string, value: number, printed: string][] = [
  ['inH2O', 1, '249.0889'],
  ['in. w.c.', 1, '249.0889'],
  ['mm H2O', 1, '9.80665'],
  ['mmWS', 1, '9.80665'],
  ['inHg', 1, '3386.389'],
  ['mmHg', 1, '133.3224'],
  ['psi', 1, '6894.757'],
  ['mbar', 1, '100'],
  ['ft³', 1, '0.02831685'],
  ['cu ft', 1, '0.02831685'],
  ['sq ft', 1, '0.09290304'],
  ['ft', 1, '0.3048'],
  ['mph', 1, '0.44704'],
  ['knots', 1, '0.5144444'],
  ['km/h', 3.6, '1.0'],
  // 4.719474 E−04 m³/s.
  ['CFM', 1 / 3600, '0.0004719474'],
  ['L/s', 1, '3.6'],
  // Temperatures fixed by definition: 32 °F, 212 °F and 273.15 K.
  ['°F', 32, '0'],
  ['°F', 212, '100'],
  ['K', 273.15, '0'],
]

describe('units of logs', () => {
  it.each(PUBLISHED)('%s: %d of it is %s', (spelling, value, printed) => {
    const unit = findUnit(spelling)
    if (!unit) throw new Error(`${spelling} is not known`)
    const converted = toRecordUnit(value, unit)
    if (unit.kind === 'temperature') expect(converted).toBeCloseTo(Number(printed), 9)
    else expectPrinted(converted, printed, spelling)
  })

  it('spells the record’s own units in the ways logs do', () => {
    for (const [spelling, kind] of [
      ['Pa', 'pressure'],
      ['m³/h', 'flow'],
      ['m3/h', 'flow'],
      ['cbm/h', 'flow'],
      ['℃', 'temperature'],
      ['m²', 'area'],
      ['qm', 'area'],
    ] as const) {
      const unit = findUnit(spelling)
      expect(unit).toEqual({ kind, unit: RECORD_UNITS[kind] })
    }
  })

  it('takes per cent as a hundredth, exactly', () => {
    const unit = findUnit('%')
    if (!unit) throw new Error('% is not known')
    for (let share = 0; share <= 100; share++) expect(toRecordUnit(share, unit)).toBe(share / 100)
  })
})
