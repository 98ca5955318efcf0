import { evaluate } from '@draughtbook/shared-calc'
import { describe, expect, it } from 'vitest'
import { book, type Rows } from '../support/book'
import { dep, FORM, HEADINGS, pres, read, titleOf, zeroRows } from './house'

// Truth: what is written into each log.
const READINGS: Rows = [dep, pres].flatMap(
  (run): Rows => [titleOf(run), ...zeroRows(run), HEADINGS, ...run.readings, [null]],
)
const withLines = (...lines: Rows) => book({ Test: [...FORM, ...lines, [null], ...READINGS] })
const AREA: Rows = [['Envelope area (m²)', 402.5]]

describe('a target that the log states', () => {
  it.each([
    ['Target', 'n50 ≤ 0.6 /h', 'n50', 0.6],
    ['Anforderung', 'n50 < 1,5 h-1', 'n50', 1.5],
    ['Eis', 'n₅₀ max. 1.0 h⁻¹', 'n50', 1],
    ['Objectif', 'q50 max. 3 m³/(h·m²)', 'qE50', 3],
    ['Specification', '≤ 5.0 m³/h·m² @ 50 Pa', 'qE50', 5],
    ['Krav', '0,6 l/s m² vid 50 Pa', 'qE50', 2.16],
    ['Required air permeability (m³/(h·m²) at 50 Pa)', 4, 'qE50', 4],
    ['Target n50 (1/h)', 0.6, 'n50', 0.6],
  ] as const)('%s | %s is taken and named', async (label, value, quantity, limit) => {
    const { record, said, asked } = read(await withLines(...AREA, [label, value]))
    expect(asked).toEqual([])
    expect(record?.target).toEqual({ quantity, limit })
    expect(said.join('\n')).toMatch(/The log states a target/)
    expect(record && evaluate(record).verdict.outcome).not.toBe('no target')
  })

  it.each([
    ['Target', 'as agreed'],
    ['Target pressure (Pa)', 50],
    ['Target', 'n50 1.5 1/h with ventilation, 3.0 1/h without'],
    ['Limit', 'q50 ≤ 250 m³/h'],
  ] as const)('%s | %s states none', async (label, value) => {
    const { record } = read(await withLines([label, value]))
    expect(record?.target).toBeUndefined()
    expect(record?.runs).toHaveLength(2)
  })

  it('is not taken without the area that it is for, nor where two differ, and both are said', async () => {
    const without = read(await withLines(['Target', 'q50 max. 3 m³/(h·m²)']))
    expect(without.record?.target).toBeUndefined()
    expect(without.said.join('\n')).toMatch(/not the envelope area that it is for/)
    const two = read(await withLines(['Target', 'n50 ≤ 0.6 /h'], ['Limit', 'n50 ≤ 1.0 /h']))
    expect(two.record?.target).toBeUndefined()
    expect(two.said.join('\n')).toMatch(/targets that differ/)
  })

  it('gives way to one that is chosen', async () => {
    const { record } = read(await withLines(['Target', 'n50 ≤ 3 /h']), {
      'target.preset': 'passive-house-new',
    })
    expect(record?.target).toEqual({ preset: 'passive-house-new' })
  })
})

describe('instruments and wind', () => {
  it.each([
    ['Fan serial no.', 'Gauge serial no.'],
    ['Seriennummer Gebläse', 'Seriennummer Druckmessgerät'],
    ['N° de série ventilateur', 'N° de série manomètre'],
    ['Vifte serienr.', 'Trykkmåler serienr.'],
  ])('%s and %s', async (device, gauge) => {
    const { record } = read(await withLines([device, 'K4711'], [gauge, 30412]))
    expect(record?.flowDevice?.serial).toBe('K4711')
    expect(record?.pressureGauge?.serial).toBe('30412')
  })

  it('two fans with numbers of their own have no one number', async () => {
    const { record } = read(await withLines(['Fan 1 serial no.', 'A1'], ['Fan 2 serial no.', 'B2']))
    expect(record?.flowDevice?.serial).toBeUndefined()
  })

  it.each([
    ['2 Bft', 2],
    ['Beaufort 3', 3],
    ['2-3 Bft', undefined],
    ['light', undefined],
  ] as const)('wind %s', async (wind, force) => {
    expect(read(await withLines(['Wind', wind])).record?.conditions.beaufort).toBe(force)
  })
})

describe('what the flows are flows of', () => {
  it.each([
    ['Flow stated at', 'reference air', 'reference air'],
    ['Flows given as', 'displayed by the fan', 'device air'],
    ['Volumenstrom bezogen auf', 'Kalibrierbedingungen', 'reference air'],
  ])('%s | %s', async (label, value, air) => {
    for (const bytes of [await withLines([label, value]), await withLines([`${label}: ${value}`])]) {
      const { record, asked, said } = read(bytes)
      expect(asked).toEqual([])
      expect(record?.runs.map(({ flowStatedAt }) => flowStatedAt)).toEqual([air, air])
      expect(record?.format).toBe('draughtbook/record@3')
      expect(said.join('\n')).toMatch(/were taken as flows of/)
    }
  })

  it.each(['standard conditions', 'outdoor conditions'])(
    '%s of both runs may be two things, and is asked',
    async (value) => {
      expect(read(await withLines(['Flow stated at', value])).asked).toEqual(['flowStatedAt'])
    },
  )
})
