import { evaluate, type TestRecord } from '@draughtbook/shared-calc'
import { describe, expect, it } from 'vitest'
import { call } from '../../addin/src/functions/functions.js'
import { functionsJson } from '../../addin/src/functions/metadata.js'
import { type FunctionId, type FunctionRow, functionTable } from '../../addin/src/functions/table.js'

// Reference vector of the calculation reference, section 1 (derived there): zero-flow pressure 1.0 Pa taken off.
const PRESSURES = [60.2, 53, 46.3, 38.8, 31.4, 24.1, 16.9].map((value) => [value])
const FLOWS = [1002, 925, 846, 757, 658, 553, 435].map((value) => [value])
const run = (id: FunctionId, ...values: unknown[]) => call(id, values, {})

describe('spreadsheet functions', () => {
  it('give exponent, r² and rates of the reference vector', () => {
    const [[n]] = run('FLOWEXPONENT', PRESSURES, FLOWS) as [[number, number, number]]
    expect(n).toBeCloseTo(0.656343313, 8)
    expect(run('DETERMINATION', PRESSURES, FLOWS)).toBeCloseTo(0.999874899, 8)
    expect(run('LEAKAGECOEFFICIENT', PRESSURES, FLOWS)).toBeCloseTo(68.3162498, 6)
    expect(run('FLOWATPRESSURE', PRESSURES, FLOWS, 50)).toBeCloseTo(890.495, 3)
    expect(run('FLOWATPRESSURE', PRESSURES, FLOWS, 4)).toBeCloseTo(169.7, 3)
    expect(run('AIRCHANGERATE', PRESSURES, FLOWS, 250)).toBeCloseTo(890.495 / 250, 4)
    expect(run('LEAKAGEPERENVELOPE', PRESSURES, FLOWS, 300, 10)).toBeCloseTo(309.647 / 300, 4)
  })

  it('equal the evaluation of the same readings wherever no correction is asked for', () => {
    const evaluation = evaluate(record())
    const [first] = evaluation.runs
    if (!first) throw new Error('no run')
    // At 20 °C, dry, 101 325 Pa the record's density differs from the reference in the fifth figure: compare the fit.
    const [[n, low, high]] = run('FLOWEXPONENT', PRESSURES, FLOWS) as [[number, number, number]]
    expect(n).toBeCloseTo(first.airFlowExponent.value, 12)
    expect([low, high]).toEqual(first.airFlowExponent.ci95?.map((end) => expect.closeTo(end, 12)))
    expect(run('DETERMINATION', PRESSURES, FLOWS)).toBeCloseTo(first.rSquared ?? Number.NaN, 12)
    expect(run('LEAKAGECOEFFICIENT', PRESSURES, FLOWS)).toBeCloseTo(first.airFlowCoefficient.value, 9)
  })

  it('give the air density of the NIST reference temperature (ideal-gas arithmetic: 101325/(287.055·293.15))', () => {
    expect(run('AIRDENSITY', 20, 0, 101_325)).toBeCloseTo(101_325 / (287.055 * 293.15), 9)
  })

  it('take signs, blanks in both columns and rows instead of columns', () => {
    const row = [PRESSURES.map(([value]) => -(value ?? 0))]
    const flows = [FLOWS.map(([value]) => value)]
    expect(run('DETERMINATION', row, flows)).toBeCloseTo(0.999874899, 8)
    expect(run('DETERMINATION', [...PRESSURES, ['']], [...FLOWS, ['']])).toBeCloseTo(0.999874899, 8)
  })

  it('spill a table where one is natural', () => {
    const table = run('LEAKAGECURVE', PRESSURES, FLOWS) as (string | number)[][]
    expect(table[0]).toEqual(['quantity', 'value', '95 % from', '95 % to', 'unit'])
    expect(new Set(table.map((row) => row.length))).toEqual(new Set([5]))
    expect(table.find(([name]) => name === 'air leakage rate at 50 Pa')?.slice(1, 4)).toEqual([
      expect.closeTo(890.495, 2),
      expect.closeTo(886.453, 2),
      expect.closeTo(894.556, 2),
    ])
  })

  it.each<[string, FunctionId, unknown[], string[], string]>([
    [
      'text in a cell',
      'DETERMINATION',
      [PRESSURES, FLOWS.with(2, ['n/a' as never])],
      ['Log!B2:B8', 'Log!C2:C8'],
      'flow in Log!C4 is the text "n/a", not a number',
    ],
    [
      'a gap',
      'DETERMINATION',
      [PRESSURES, FLOWS.with(6, ['' as never])],
      ['Log!B2:B8', 'Log!C2:C8'],
      'flow in Log!C8 is empty, not a number',
    ],
    [
      'a negative flow',
      'DETERMINATION',
      [PRESSURES, FLOWS.with(0, [-5])],
      ['Log!B2:B8', 'Log!C2:C8'],
      'flow in Log!C2 is -5; it must be above 0',
    ],
    [
      'unequal lengths',
      'DETERMINATION',
      [PRESSURES, FLOWS.slice(1)],
      [],
      'pressures has 7 cells and flows 6',
    ],
    [
      'too few',
      'DETERMINATION',
      [PRESSURES.slice(5), FLOWS.slice(5)],
      [],
      '2 readings: a curve needs at least 3',
    ],
    [
      'one pressure',
      'DETERMINATION',
      [
        [[50], [50], [50]],
        [[1], [2], [3]],
      ],
      [],
      'all readings are at one pressure',
    ],
    [
      'zero pressure',
      'DETERMINATION',
      [PRESSURES.with(1, [0]), FLOWS],
      ['Log!B2:B8', 'Log!C2:C8'],
      'pressure in Log!B3 is 0',
    ],
    ['no volume', 'AIRCHANGERATE', [PRESSURES, FLOWS, ''], ['', '', 'Log!F1'], 'volume in Log!F1 is empty'],
    [
      'humidity in per cent',
      'AIRDENSITY',
      [20, 50, 101_325],
      [],
      'humidity is 50; it must be between 0 and 1',
    ],
  ])('name the fault: %s', (_name, id, values, parameterAddresses, words) => {
    expect(() => call(id, values, { parameterAddresses })).toThrow(words)
  })
})

describe('functions.json', () => {
  const { functions } = JSON.parse(functionsJson()) as {
    functions: { id: string; parameters: object[]; options: object }[]
  }

  it('describes every function of the table, with addresses asked for', () => {
    expect(functions.map(({ id }) => id)).toEqual(functionTable.map(({ id }) => id))
    for (const { options } of functions) expect(options).toEqual({ requiresParameterAddresses: true })
  })

  it('names are words that no spreadsheet takes for a cell or a row-and-column address', () => {
    for (const { id } of functionTable as readonly FunctionRow[]) {
      expect(id).toMatch(/^[A-Z]{6,}$/)
      expect(id).not.toMatch(/^[A-Z]{1,3}\d+$|^R\d*C\d*$/)
    }
  })

  it('keeps descriptions within what Excel shows', () => {
    for (const { description, parameters } of functionTable as readonly FunctionRow[]) {
      expect(description.length).toBeLessThanOrEqual(128)
      for (const parameter of parameters) expect(parameter.description.length).toBeLessThanOrEqual(128)
    }
  })
})

function record(): TestRecord {
  return {
    format: 'draughtbook/record@1',
    building: { name: 'Vector (invented)', volume_m3: 250 },
    test: { date: '2026-10-14', method: 'iso-9972:2015' },
    conditions: {
      indoorTemperature_C: 20,
      outdoorTemperature_C: 20,
      barometricPressure_Pa: 101_325,
      indoorRelativeHumidity: 0,
      outdoorRelativeHumidity: 0,
    },
    runs: [
      {
        direction: 'pressurisation',
        readings: PRESSURES.map(([pressure = 0], index) => ({
          pressure_Pa: pressure,
          flow_m3_h: FLOWS[index]?.[0] ?? 0,
        })),
      },
    ],
  }
}
