import { evaluateInput, InputError, type TestRecord } from '@draughtbook/shared-calc'
import { describe, expect, it } from 'vitest'
import { faultlessRecord, reading, recordWith, run } from '../support/records'

type Change = (record: TestRecord) => unknown
/** The faults of an input, as lines. */
function faultsOf(input: unknown): string[] {
  try {
    evaluateInput(input)
  } catch (error) {
    if (error instanceof InputError) return error.message.split('\n')
    throw error
  }
  return []
}
const withField = (change: Change) => faultsOf(recordWith((record) => void change(record)))
/** Sets what no typed record could hold. */
const set = (target: object, key: string, value: unknown) => Object.assign(target, { [key]: value })

describe('bad input is one clear error that names its field', () => {
  it.each([
    [
      'missing temperature',
      (r) => set(r.conditions, 'indoorTemperature_C', undefined),
      'conditions.indoorTemperature_C: indoor temperature is missing',
    ],
    [
      'text for a number',
      (r) => set(reading(r, 2), 'flow_m3_h', '12,5'),
      'runs[0].readings[2].flow_m3_h: air flow must be a number in m³/h, not the text "12,5"',
    ],
    [
      'NaN',
      (r) => set(reading(r, 2), 'flow_m3_h', Number.NaN),
      'runs[0].readings[2].flow_m3_h: air flow must be a number in m³/h, not NaN',
    ],
    [
      'infinite',
      (r) => set(r.building, 'volume_m3', Number.POSITIVE_INFINITY),
      'building.volume_m3: internal volume must be a number in m³, not Infinity',
    ],
    [
      'a negative volume',
      (r) => set(r.building, 'volume_m3', -212),
      'building.volume_m3: internal volume is −212; it must be between 1 and 10\u00a0000\u00a0000 m³',
    ],
    [
      'a negative flow',
      (r) => set(reading(r, 0), 'flow_m3_h', -5),
      'runs[0].readings[0].flow_m3_h: air flow is −5; it must be between',
    ],
    [
      'an absurd temperature',
      (r) => set(r.conditions, 'indoorTemperature_C', 293),
      'conditions.indoorTemperature_C: indoor temperature is 293; it must be between −30 and 60 °C',
    ],
    [
      'humidity in per cent',
      (r) => set(r.conditions, 'indoorRelativeHumidity', 45),
      'conditions.indoorRelativeHumidity: indoor relative humidity is 45; it must be between 0 and 1 (a fraction, not per cent)',
    ],
    [
      'pressure in hPa',
      (r) => set(r.conditions, 'barometricPressure_Pa', 1006),
      'conditions.barometricPressure_Pa: barometric pressure is 1006; it must be between 45\u00a0000 and 115\u00a0000 Pa',
    ],
    [
      'an unknown key',
      (r) => set(r.building, 'volume', 212),
      'building.volume: unknown field; did you mean volume_m3?',
    ],
    ['an unknown key of the record', (r) => set(r, 'wether', 1), 'wether: unknown field'],
    [
      'a date that does not exist',
      (r) => set(r.test, 'date', '2026-02-30'),
      'test.date: test date must be a date of the form 2026-10-14, not the text "2026-02-30"',
    ],
    [
      'another format',
      (r) => set(r, 'format', 'draughtbook/record@9'),
      'format: "draughtbook/record@9" is not known here; a later Draughtbook may have written it. This one reads "draughtbook/record@1"',
    ],
    [
      'two runs in one direction',
      (r) => set(run(r, 1), 'direction', 'depressurisation'),
      'runs[1].direction: both runs are marked depressurisation; enter one run per direction',
    ],
    ['no run', (r) => set(r, 'runs', []), 'runs: the record has no run'],
    [
      'a reading without a flow',
      (r) => delete reading(r, 3).flow_m3_h,
      'runs[0].readings[3].flow_m3_h: reading has neither an air flow nor a device pressure',
    ],
    [
      'a zero pressure',
      (r) => set(reading(r, 3), 'pressure_Pa', 0),
      'runs[0].readings[3].pressure_Pa: a pressure difference of 0 Pa cannot be used',
    ],
    [
      'a reading on the other side of zero',
      (r) => set(reading(r, 3), 'pressure_Pa', 30),
      'runs[0].readings[3].pressure_Pa: pressure difference 30 Pa is on the wrong side',
    ],
    [
      'equal pressures throughout',
      (r) => {
        for (const one of run(r).readings) one.pressure_Pa = -50
      },
      'runs[0].readings: all pressure differences are equal, so no curve can be fitted',
    ],
    [
      'equal flows throughout',
      (r) => {
        for (const one of run(r).readings) one.flow_m3_h = 300
      },
      'runs[0].readings: all air flows are equal, so no curve can be fitted',
    ],
    [
      'a target without its pressure',
      (r) => set(r, 'target', { quantity: 'n_pr', limit: 1 }),
      'target.referencePressure_Pa: target n_pr needs a reference pressure',
    ],
  ] as [string, Change, string][])('%s', (_, change, message) => {
    const faults = withField(change)
    expect(faults).toHaveLength(1)
    expect(faults[0]).toContain(message)
  })

  it('two readings are too few to work out', () => {
    const faults = withField((r) => run(r).readings.splice(2))
    expect(faults).toHaveLength(1)
    expect(faults[0]).toMatch(/^runs\[0\]\.readings: /)
    expect(faults[0]).toContain('3 readings')
  })

  it('names every fault at once', () => {
    const faults = withField((r) => {
      set(r.building, 'volume_m3', -1)
      set(reading(r, 0), 'flow_m3_h', 'x')
      set(reading(r, 1, 1), 'pressure_Pa', null)
    })
    expect(faults.map((line) => line.split(':')[0])).toEqual([
      'building.volume_m3',
      'runs[0].readings[0].flow_m3_h',
      'runs[1].readings[1].pressure_Pa',
    ])
  })

  it.each([undefined, null, 7, 'record', [], {}])('refuses %j as a record', (input) => {
    expect(faultsOf(input)).not.toEqual([])
  })

  it('names the cell where the record came from a sheet', () => {
    const record = faultlessRecord()
    set(reading(record, 2), 'flow_m3_h', 'abc')
    const cells = { 'runs[0].readings[2].flow_m3_h': 'Log!D14' }
    expect(() => evaluateInput(record, { cells })).toThrow(
      'Log!D14 · runs[0].readings[2].flow_m3_h: air flow must be a number in m³/h, not the text "abc"',
    )
  })

  it('names the cells in findings likewise', () => {
    const record = recordWith((r) => {
      reading(r, 5).pressure_Pa = -9.5
    })
    const { findings } = evaluateInput(record, { cells: { 'runs[0].readings[5].pressure_Pa': 'Log!C17' } })
    const found = findings.find(({ rule }) => rule === 'lowest-pressure')
    expect(found?.cells).toEqual(['Log!C17'])
  })
})
