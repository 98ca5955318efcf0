import type { Cell, Grid } from '@draughtbook/shared-calc/log'
import { describe, expect, it } from 'vitest'
import { live } from '../../addin/src/calc/live.js'
import { readEntries } from '../../addin/src/calc/read-entries.js'
import { CellSheet } from '../../addin/src/host/cell-sheet.js'
import { emptyEntries, type TestEntries } from '../../addin/src/pane/one-test/entries.js'
import { emptyRun } from '../../addin/src/pane/one-test/typed/typed-run.js'
import { openedBook } from './opened-book.js'

type Cells = Parameters<typeof openedBook>[1][string]

function gridOf(
  cells: Cells,
  change: (sheet: CellSheet) => void = () => undefined,
  hiddenRows: number[] = [],
): Grid {
  const [opened] = openedBook('log.xlsx', { Log: cells }).sheets
  if (!opened) throw new Error('no sheet')
  const sheet = new CellSheet({ ...opened, hiddenRows })
  change(sheet)
  return {
    kind: 'ranges',
    fileName: 'log.xlsx',
    sheetNames: ['Log'],
    sheet: (name) => (name === 'Log' ? sheet : undefined),
    names: [],
    date1904: false,
    findings: [],
  }
}

const READINGS: Cells = {
  A1: 'Pressure [Pa]',
  B1: 'Flow [L/s]',
  ...Object.fromEntries(
    [-60, -50, -40, -30, -20].flatMap((pressure, row) => [
      [`A${row + 2}`, pressure],
      [`B${row + 2}`, 40 - 5 * row],
    ]),
  ),
}

const entries = (
  pressure = 'Log!A2:A6',
  flow = 'Log!B2:B6',
  fields: TestEntries['fields'] = {},
): TestEntries => ({
  ...emptyEntries(),
  fields: { ...emptyEntries().fields, ...fields },
  runs: { depressurisation: { pressure: { reference: pressure }, flow: { reference: flow } } },
})

const rules = (read: ReturnType<typeof readEntries>): string[] => read.told.findings().map(({ rule }) => rule)

describe('what was typed and picked becomes a record', () => {
  it('converts from the unit of the heading above the picked cells, and says so', () => {
    const read = readEntries(entries(), gridOf(READINGS))
    // 40 L/s = 144 m³/h by the definition of the litre.
    expect(read.runs[0]?.readings[0]).toEqual({ pressure_Pa: -60, flow_m3_h: expect.closeTo(144, 9) })
    expect(read.told.findings().find(({ rule }) => rule === 'log-unit')?.cells).toEqual(['Log!B2:B6'])
    expect(read.cells['runs[0].readings[4].flow_m3_h']).toBe('Log!B6')
  })

  it('leaves headings out of a picked column, pairing by row, and says so', () => {
    const read = readEntries(entries('Log!A1:A1048576', 'Log!B2:B6'), gridOf(READINGS))
    expect(read.runs[0]?.readings).toHaveLength(5)
    expect(rules(read)).toContain('log-heading')
  })

  it('takes a unit given with the pick before that of the heading', () => {
    const given = entries()
    given.runs.depressurisation = {
      ...given.runs.depressurisation,
      flow: { reference: 'Log!B2:B6', unit: 'm3/h' },
    }
    const read = readEntries(given, gridOf(READINGS))
    expect(read.runs[0]?.readings[0]?.flow_m3_h).toBe(40)
    expect(rules(read)).toContain('log-unit-differs')
  })

  it.each<[string, (sheet: CellSheet) => void, string, string]>([
    [
      'text among the flows',
      (sheet) => sheet.set(3, 1, { kind: 'text', value: 'gust' }),
      'log-placeholder',
      'Log!B4',
    ],
    [
      'an error value',
      (sheet) => sheet.set(3, 0, { kind: 'error', value: '#REF!' }),
      'log-error-value',
      'Log!A4',
    ],
    ['a gap in the middle', (sheet) => sheet.set(3, 1, undefined), 'log-incomplete', 'Log!B4'],
    [
      'a number that cannot be read',
      (sheet) => sheet.set(3, 1, { kind: 'text', value: '3O' }),
      'unusable-entry',
      'Log!B4',
    ],
    [
      'a struck-through reading',
      (sheet) => sheet.set(3, 1, { kind: 'number', value: 30, struck: 'whole' }),
      'log-struck-through',
      'Log!B4',
    ],
    [
      'a formula without a result',
      (sheet) => sheet.set(3, 1, { kind: 'unstored', value: '', formula: 'A1' } as Cell),
      'unusable-entry',
      'Log!B4',
    ],
  ])('leaves out %s and names the cell', (_name, change, rule, cell) => {
    const read = readEntries(entries(), gridOf(READINGS, change))
    expect(read.runs[0]?.readings).toHaveLength(4)
    expect(read.told.findings().find((finding) => finding.rule === rule)?.cells).toEqual([cell])
  })

  it('does not call the last reading a fault while its flow is still to come', () => {
    const read = readEntries(
      entries(),
      gridOf(READINGS, (sheet) => sheet.set(5, 1, undefined)),
    )
    expect(read.waiting.depressurisation).toBe('Log!A6')
    expect(read.told.unusable).toBe(false)
  })

  it('reads hidden rows, with a caution', () => {
    const read = readEntries(entries(), gridOf(READINGS, undefined, [3]))
    expect(read.runs[0]?.readings).toHaveLength(5)
    expect(read.told.findings().find(({ rule }) => rule === 'log-hidden')?.cells).toEqual(['Log!A4:B4'])
  })

  it('takes the unit beside a linked cell', () => {
    const grid = gridOf({ ...READINGS, D1: 1006, E1: 'hPa', D2: 'Indoor temperature [°F]', E2: 68 })
    const read = readEntries(
      entries(undefined, undefined, {
        'conditions.barometricPressure_Pa': { cell: 'Log!D1' },
        'conditions.indoorTemperature_C': { cell: 'Log!E2' },
      }),
      grid,
    )
    // 1 hPa = 100 Pa and 68 °F = 20 °C by definition.
    expect(read.draft.conditions).toEqual({
      barometricPressure_Pa: expect.closeTo(100_600, 6),
      indoorTemperature_C: expect.closeTo(20, 9),
    })
  })

  it('names a sheet that is gone', () => {
    const read = readEntries(entries('Old!A2:A6', 'Log!B2:B6'), gridOf(READINGS))
    expect(read.told.findings()[0]?.message).toBe('This workbook has no cells Old!A2:A6.')
  })

  it('takes a run of one reading by a method that needs no more, and not by one that fits a curve', () => {
    const one = (method: string) =>
      readEntries(entries('Log!A2:A2', 'Log!B2:B2', { 'test.method': { text: method } }), gridOf(READINGS))
    const single = one('astm-e1827-22-one-point')
    // 40 L/s is 144 m³/h.
    expect(single.runs[0]?.readings).toEqual([{ pressure_Pa: -60, flow_m3_h: expect.closeTo(144, 9) }])
    expect(single.draft.format).toBe('draughtbook/record@2')
    const curve = one('iso-9972:2015')
    expect([curve.runs.length, curve.unfinished[0]?.readings.length]).toEqual([0, 1])
  })

  it('refuses a negative air flow and a number beyond all numbers, and says so where they were typed', () => {
    const typed = {
      ...emptyRun(),
      readings: [
        { pressure: '50', second: '-620' },
        { pressure: '40', second: '1e400' },
      ],
    }
    const read = readEntries(
      {
        ...emptyEntries(),
        fields: { 'building.volume_m3': { text: '1e400' } },
        runs: { depressurisation: { typed } },
      },
      undefined,
    )
    expect(read.typedFaults['depressurisation.readings[0].second']).toContain('An air flow has no sign')
    expect(read.typedFaults['depressurisation.readings[1].second']).toBe('"1e400" is not a number')
    expect(read.unfinished.flatMap(({ readings }) => readings)).toEqual([])
    expect(read.draft.building).toEqual({})
  })

  it('an entry that cannot be used makes the verdict not valid, whatever the other readings give', () => {
    const fields: TestEntries['fields'] = {
      'building.name': { text: 'Shed (invented)' },
      'building.volume_m3': { text: '2000' },
      'test.date': { text: '2026-10-14' },
      'conditions.indoorTemperature_C': { text: '20' },
      'conditions.outdoorTemperature_C': { text: '10' },
      'target.quantity': { text: 'n50' },
      'target.limit': { text: '5' },
    }
    const sound = live(entries(undefined, undefined, fields), gridOf(READINGS))
    expect(sound.evaluation?.verdict.criteria[0]?.within).toBe(true)
    const broken = live(
      entries(undefined, undefined, fields),
      gridOf(READINGS, (sheet) => sheet.set(3, 1, { kind: 'text', value: '3O' })),
    )
    expect(broken.unusable).toBe(true)
    expect(broken.evaluation?.verdict.outcome).toBe('not valid')
  })
})
