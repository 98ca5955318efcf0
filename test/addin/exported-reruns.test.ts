import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Grid } from '@draughtbook/shared-calc/log'
import { rerunFile } from '@draughtbook/shared-calc/rerun'
import { describe, expect, it } from 'vitest'
import { acceptedEntries } from '../../addin/src/calc/accepted-entries'
import { type LiveResult, live } from '../../addin/src/calc/live'
import { acceptedTest, understandLog } from '../../addin/src/calc/understand'
import { CellSheet } from '../../addin/src/host/cell-sheet'
import { emptyEntries, type TestEntries } from '../../addin/src/pane/one-test/entries'
import { type Lists, newRow } from '../../addin/src/pane/one-test/lists'
import { emptyRun } from '../../addin/src/pane/one-test/typed/typed-run'
import { openBook } from '../../addin/src/worker/open-book'
import { writeSummaryFor } from '../../addin/src/worker/write-summary'
import { plainPhoto } from '../workbook/support/made-photo'

const ZERO = Array.from({ length: 10 }, (_, i) => `0.${i % 3}`)
const PRESSURES = [60, 52, 44, 36, 28, 20, 12]

/** An invented house of 30·Δp^0.65 m³/h, as somebody types it in. */
const typedRun = (factor: number, pressures: readonly number[] = PRESSURES) => ({
  typed: {
    ...emptyRun(),
    zeroFlowBefore: ZERO,
    zeroFlowAfter: ZERO,
    readings: pressures.map((pressure) => ({
      pressure: String(pressure),
      second: (factor * pressure ** 0.65).toFixed(1),
    })),
  },
})

const test = (
  fields: Readonly<Record<string, string>> = {},
  more: { runs?: TestEntries['runs']; lists?: Lists } = {},
): TestEntries => ({
  ...emptyEntries(),
  fields: Object.fromEntries(
    Object.entries({
      'test.method': 'iso-9972:2015',
      'building.name': 'Plot 12 (invented)',
      'building.volume_m3': '28 250 ft³',
      'building.height_m': '900 cm',
      'test.date': '2026-10-14',
      'conditions.indoorTemperature_C': '68 °F',
      'conditions.outdoorTemperature_C': '9',
      'conditions.barometricPressure_Pa': '1004 hPa',
      'conditions.indoorRelativeHumidity': '45 %',
      'target.preset': 'passive-house-new',
      ...fields,
    }).map(([path, text]) => [path, { text }]),
  ),
  runs: more.runs ?? { depressurisation: typedRun(30) },
  ...(more.lists && { lists: more.lists }),
})

const both = { depressurisation: typedRun(30), pressurisation: typedRun(31) }
const onePoint = { depressurisation: typedRun(30, [50, 50, 50, 50, 50]) }

const leaks: Lists = {
  'leaks.list': [
    { place: 'loft hatch', kind: 'hatch', foundBy: 'smoke', 'size.diameter_mm': '12', fixed: 'no' },
    {
      place: 'kitchen',
      kind: 'socket or chase',
      'size.area_cm2': '2.5',
      count: '3',
      photo: 'p.jpg',
      fixed: 'no',
    },
  ],
}
const takeOff: Lists = {
  'takeOff.spaces': [
    {
      ...newRow('takeOff.spaces'),
      name: 'hall',
      'solid.shape': 'box',
      'solid.length_m': '12.5',
      'solid.width_m': '8',
      'solid.height_m': '8',
      countsIn: 'both',
      countsAsFloor: 'yes',
    },
  ],
}
const preparation: Lists = {
  'test.openings': [{ opening: 'drain traps', kind: 'drain traps', state: 'filled' }],
  'preparation.cautions': [
    { caution: 'fuel-burning appliances', answer: 'taken care of', by: 'S. Sample', on: '2026-10-14' },
  ],
}
const plan: Lists = {
  'plan.devices': [
    {
      name: 'Fan (invented)',
      'ranges[0].label': 'wide',
      'ranges[0].minimumFlow_m3_h': '100',
      'ranges[0].maximumFlow_m3_h': '2000',
    },
  ],
}

/** What is typed, and what of it must be in the record. */
const TYPED: readonly (readonly [string, TestEntries, readonly string[]])[] = [
  ['a test of one direction in the units people use', test(), ['building.height_m', 'target']],
  ['two directions', test({}, { runs: both }), ['runs[1]']],
  ['one pressure', test({ 'test.method': 'astm-e1827-22-one-point' }, { runs: onePoint }), ['runs[0]']],
  ['leaks with a photo', test({}, { runs: both, lists: leaks }), ['leaks.list[1].photo']],
  ['a take-off', test({}, { runs: both, lists: takeOff }), ['takeOff.spaces[0]']],
  ['a plan', test({ 'plan.zeroFlowPressure_Pa': '0.5' }, { runs: both, lists: plan }), ['plan.devices[0]']],
  [
    'openings and cautions',
    test({ 'test.preparation': 'method 1' }, { runs: both, lists: preparation }),
    ['test.openings[0]', 'preparation.cautions[0]'],
  ],
  [
    'all of it',
    test(
      { 'test.preparation': 'method 1' },
      { runs: both, lists: { ...leaks, ...takeOff, ...preparation, ...plan } },
    ),
    ['leaks.list[1]', 'takeOff.spaces[0]', 'plan.devices[0]', 'test.openings[0]'],
  ],
]

/** As the page writes it when the download is pressed, and as the command re-runs it. */
async function outcomeOf({ record, told = [], cells, problems }: LiveResult): Promise<string | undefined> {
  if (!record) throw new Error(JSON.stringify(problems))
  const photos = new Map([['p.jpg', plainPhoto()]])
  const { bytes } = await writeSummaryFor({ kind: 'summary', record, cells, findings: told, photos })
  const tests = await rerunFile(bytes, 'summary.xlsx')
  expect(tests).toHaveLength(1)
  expect(tests[0]?.differences).toEqual([])
  return tests[0]?.outcome
}

describe('what the page exports re-runs exactly as issued', () => {
  it.each(TYPED)('typed: %s', async (_, entries, parts) => {
    const result = live(entries, undefined)
    for (const part of parts) expect(result.record, JSON.stringify(result.site.faults)).toHaveProperty(part)
    expect(await outcomeOf(result)).toBe('exactly as issued')
  })

  it.each(['01-vertical-two-blocks.xlsx', '19-gauge-export.csv', '12-blank-rows.xlsx'])(
    'an accepted log: %s',
    async (name) => {
      const bytes = new Uint8Array(readFileSync(join(import.meta.dirname, '../log/samples', name)))
      const book = openBook(bytes, name)
      const sheets = book.sheets.map((sheet) => new CellSheet(sheet))
      const grid: Grid & { sheets: CellSheet[] } = {
        ...book,
        sheets,
        sheetNames: sheets.map((sheet) => sheet.name),
        sheet: (wanted) => sheets.find((sheet) => sheet.name === wanted),
      }
      const { test: understood } = understandLog(grid, {})
      if (!understood?.record) throw new Error(`${name} leaves something open`)
      const entries = acceptedEntries(emptyEntries(), understood, understood.record, { answers: {} })
      expect(await outcomeOf(live(entries, grid, false, acceptedTest(grid, {})))).toBe('exactly as issued')
    },
  )
})
