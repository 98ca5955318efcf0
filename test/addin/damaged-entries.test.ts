import type { Grid } from '@draughtbook/shared-calc/log'
import { describe, expect, it } from 'vitest'
import { live } from '../../addin/src/calc/live.js'
import { CellSheet } from '../../addin/src/host/cell-sheet.js'
import { newTest } from '../../addin/src/kept/kept-test.js'
import { retestOf } from '../../addin/src/kept/retest.js'
import { isUntouched, parseEntries, referencesOf } from '../../addin/src/pane/one-test/entries.js'
import { photosIn } from '../../addin/src/pane/one-test/lists.js'
import { aboutTest, standingOf } from '../../addin/src/pane/one-test/standing.js'
import type { TestState } from '../../addin/src/pane/one-test/test-state.js'
import { openedBook } from './opened-book.js'

/** An invented hall that leaks 300·Δp^0.65 m³/h, with something in every kind of place that entries have. */
const READINGS = [60, 50, 40, 30, 20].map((pressure) => ({
  pressure: String(pressure),
  second: (300 * pressure ** 0.65).toFixed(2),
  range: 'A',
  at: '14:05',
  kept: ['pressure'],
}))
const WHOLE = {
  version: 1,
  fields: {
    'test.method': { text: 'iso-9972:2015' },
    'building.name': { text: 'Hall (invented)' },
    'building.volume_m3': { text: '8000', unit: 'm³', kept: true },
    'building.floorArea_m2': { cell: 'Log!B1', unit: 'm²' },
    'test.date': { text: '2026-10-14' },
    'conditions.indoorTemperature_C': { text: '20' },
    'conditions.outdoorTemperature_C': { text: '20' },
  },
  runs: {
    depressurisation: {
      typed: {
        second: 'flow',
        pressureUnit: 'Pa',
        secondUnit: 'm³/h',
        zeroFlowBefore: ['0.5', '0.4'],
        zeroFlowAfter: ['0.5'],
        readings: READINGS,
        kept: ['zeroFlowBefore'],
      },
      range: 'A',
    },
    pressurisation: {
      pressure: { reference: 'Log!A2:A6', unit: 'Pa' },
      flow: { reference: 'Log!B2:B6', unit: 'm³/h' },
      ranges: { reference: 'Log!C2:C6' },
      zeroFlowSign: 'as logged',
    },
  },
  log: { answers: { 'building.volume_m3': '8000' } },
  lists: {
    'takeOff.spaces': [{ name: 'Hall', 'solid.length_m': '40' }],
    'leaks.list': [{ place: 'hatch', kind: 'hatch', photo: 'leak-1.jpg', fixed: 'no' }],
    'site.round': [{ stop: 'hatches', found: 'leak found' }],
    'preparation.cautions': [{ caution: 'fuel-burning appliances', answer: 'taken care of' }],
  },
}

/** Every place in a value, as a list of keys. */
function placesIn(value: unknown, at: readonly string[] = []): (readonly string[])[] {
  const parts = typeof value === 'object' && value !== null ? Object.entries(value) : []
  return [at, ...parts.flatMap(([key, part]) => placesIn(part, [...at, key]))]
}

/** A copy with another value, or nothing, in one place. */
function damaged(value: unknown, [key, ...rest]: readonly string[], put: unknown): unknown {
  if (key === undefined) return put
  const copy = (Array.isArray(value) ? [...value] : { ...(value as object) }) as Record<string, unknown>
  const part = damaged(copy[key], rest, put)
  if (part === undefined) delete copy[key]
  else copy[key] = part
  return copy
}

const [opened] = openedBook('log.xlsx', {
  Log: { B1: 120, A2: -60, B2: 4300, A3: -50, B3: 3810, C2: 'A' },
}).sheets
if (!opened) throw new Error('no sheet')
const sheet = new CellSheet(opened)
const GRID: Grid = {
  kind: 'ranges',
  fileName: 'log.xlsx',
  sheetNames: ['Log'],
  sheet: (name) => (name === 'Log' ? sheet : undefined),
  names: [],
  date1904: false,
  findings: [],
}

/** What the page does with entries before it draws them. */
function use(text: string): boolean {
  const entries = parseEntries(text)
  if (!entries) return false
  isUntouched(entries)
  referencesOf(entries)
  photosIn(entries.lists)
  const result = live(entries, GRID)
  const state = { entries, result, evaluation: result.evaluation, step: 'before' } as TestState
  standingOf(state)
  retestOf({ ...newTest(text), about: aboutTest(state) })
  return true
}

describe('entries that were damaged where they were kept', () => {
  it('are refused or read, and never bring the page down', () => {
    expect(use(JSON.stringify(WHOLE))).toBe(true)
    const fallen: string[] = []
    let refused = 0
    for (const place of placesIn(WHOLE))
      for (const put of [undefined, null, 7, 'x', true, [], [null], {}, { text: 7 }]) {
        try {
          if (!use(JSON.stringify(damaged(WHOLE, place, put)) ?? '')) refused += 1
        } catch (error) {
          fallen.push(`${place.join('.')} = ${JSON.stringify(put)}: ${error}`)
        }
      }
    expect(fallen).toEqual([])
    expect(refused).toBeGreaterThan(100)
  })
})
