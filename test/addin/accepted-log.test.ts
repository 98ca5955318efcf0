import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { type Grid, openLog } from '@draughtbook/shared-calc/log'
import { describe, expect, it } from 'vitest'
import { acceptedEntries } from '../../addin/src/calc/accepted-entries'
import { live } from '../../addin/src/calc/live'
import { acceptedTest, understandLog } from '../../addin/src/calc/understand'
import { CellSheet } from '../../addin/src/host/cell-sheet'
import { emptyEntries, parseEntries, type TestEntries } from '../../addin/src/pane/one-test/entries'
import { openBook } from '../../addin/src/worker/open-book'
import { commandLine } from '../service/support/command-line'

const folder = join(import.meta.dirname, '../log/samples')
const logs = readdirSync(folder).filter((name) => /\.(xlsx|csv)$/.test(name))
const bytesOf = (name: string) => new Uint8Array(readFileSync(join(folder, name)))
const MISSING = {
  'building.volume_m3': '340',
  'conditions.indoorTemperature_C': '20',
  'conditions.outdoorTemperature_C': '9',
  'conditions.barometricPressure_Pa': '1013 hPa',
  'test.date': '2026-10-14',
}
const answersFor = (name: string): Record<string, string> => (name === '20-raw-series.csv' ? MISSING : {})

/** Cells as the page holds them: handed over by the worker as plain data. */
function pageGrid(name: string): Grid & { sheets: CellSheet[] } {
  const book = openBook(bytesOf(name), name)
  const sheets = book.sheets.map((sheet) => new CellSheet(sheet))
  return {
    ...book,
    sheets,
    sheetNames: sheets.map((sheet) => sheet.name),
    sheet: (wanted) => sheets.find((sheet) => sheet.name === wanted),
  }
}

function accepted(grid: Grid, answers: Record<string, string>): TestEntries {
  const { test } = understandLog(grid, answers)
  if (!test?.record) throw new Error(`open: ${JSON.stringify([test?.questions, test?.problems])}`)
  return acceptedEntries(emptyEntries(), test, test.record, { answers })
}

const figures = (entries: TestEntries, grid: Grid) =>
  live(entries, grid, false, acceptedTest(grid, entries.log?.answers ?? {}))

describe('a log accepted in the pane', () => {
  it.each(logs)('%s gives the figures of the command line for every test of it', async (name) => {
    const given = answersFor(name)
    const sets = Object.entries(given).flatMap(([path, value]) => ['--set', `${path}=${value}`])
    const { out } = await commandLine('evaluate', join(folder, name), '--json', ...sets)
    const wanted = [JSON.parse(out)].flat()
    const grid = pageGrid(name)
    const { tests } = understandLog(grid, given)
    expect(tests).toHaveLength(wanted.length)
    for (const [index, { key }] of tests.entries()) {
      const entries = accepted(grid, tests.length > 1 ? { ...given, test: key } : given)
      // As it is kept with the workbook and opened again.
      const kept = parseEntries(JSON.stringify(entries))
      expect(kept).toEqual(entries)
      const { evaluation, findings, problems, unusable } = figures(entries, grid)
      expect([problems, unusable]).toEqual([[], false])
      const { results, runs } = evaluation ?? {}
      const { results: own } = wanted[index]
      expect([results?.n50?.value, results?.q50.value]).toEqual([own.n50.value, own.q50.value])
      expect(runs?.map(({ readings }) => readings.length).sort()).toEqual(
        wanted[index].runs.map(({ readings }: { readings: unknown[] }) => readings.length).sort(),
      )
      const rules = new Set(findings.map(({ rule }) => rule))
      for (const { rule, severity } of wanted[index].findings)
        if (severity !== 'note') expect(rules).toContain(rule)
    }
  })

  it('follows a cell that is changed, and a field that is typed over', () => {
    const grid = pageGrid('01-vertical-two-blocks.xlsx')
    const entries = accepted(grid, {})
    const before = figures(entries, grid).record
    const sheet = grid.sheets[0] as CellSheet
    // B7 is the internal volume, C24 the first flow of the depressurisation.
    expect([sheet.at(6, 1)?.value, sheet.at(23, 2)?.value]).toEqual([412.6, 373])
    sheet.set(6, 1, { kind: 'number', value: 825.2 })
    sheet.set(23, 2, { kind: 'number', value: 380 })
    const after = figures(entries, grid).record
    expect(before?.building.volume_m3).toBe(412.6)
    expect(after?.building.volume_m3).toBe(825.2)
    expect(after?.runs[0]?.readings[0]?.flow_m3_h).toBe(380)
    const typed = { ...entries, fields: { ...entries.fields, 'building.volume_m3': { text: '500' } } }
    expect(figures(typed, grid).record?.building.volume_m3).toBe(500)
  })

  it('is not valid once a change leaves something open', () => {
    const grid = pageGrid('01-vertical-two-blocks.xlsx')
    const entries = accepted(grid, {})
    grid.sheets[0]?.set(6, 1, undefined)
    const { evaluation, unusable, findings, problems } = figures(entries, grid)
    expect(unusable).toBe(true)
    expect(evaluation).toBeUndefined()
    expect(problems.map(({ path }) => path)).toContain('building.volume_m3')
    expect(findings.map(({ message }) => message).join()).toMatch(/internal volume/)
  })

  it('asks for what is missing before anything is calculated', () => {
    const read = understandLog(openLog(bytesOf('20-raw-series.csv'), '20-raw-series.csv'), {})
    expect(read.test?.record).toBeUndefined()
    expect(read.test?.questions.map(({ path }) => path)).toEqual(
      expect.arrayContaining(['building.volume_m3', 'conditions.indoorTemperature_C']),
    )
  })
})
