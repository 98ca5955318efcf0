import { readFile } from 'node:fs/promises'
import { openLog, type Sheet } from '@draughtbook/shared-calc/log'
import { describe, expect, it } from 'vitest'
import { createApp } from '../../service/src/app'
import { listen, postJson } from '../service/support/listen'
import { englishForm } from './logs/english-form'
import { madeUpLogs } from './logs/index'
import { seriesSheet } from './logs/series-sheet'
import { expectRecord } from './support/expect-record'

/** A sheet as a spreadsheet program hands its used range over. */
function rangeOf(sheet: Sheet) {
  const rows = Array.from({ length: sheet.rows }, (_, row) => row)
  const columns = Array.from({ length: sheet.columns }, (_, column) => column)
  const table = <T>(pick: (row: number, column: number) => T) =>
    rows.map((row) => columns.map((column) => pick(row, column)))
  return {
    sheet: sheet.name,
    address: 'A1',
    values: table((row, column) => sheet.at(row, column)?.value ?? ''),
    valueTypes: table((row, column) => (sheet.at(row, column)?.kind === 'error' ? 'Error' : 'String')),
    numberFormats: table((row, column) => sheet.at(row, column)?.format ?? 'General'),
    struck: table((row, column) => sheet.at(row, column)?.struck === 'whole'),
    hiddenRows: rows.filter((row) => sheet.isRowHidden(row)).map((row) => row + 1),
  }
}

const rangesOf = (bytes: Uint8Array, fileName: string) => {
  const grid = openLog(bytes, fileName)
  return grid.sheetNames.flatMap((name) => {
    const sheet = grid.sheet(name)
    return sheet ? [rangeOf(sheet)] : []
  })
}

async function post(body: unknown) {
  const base = await listen(createApp())
  const response = await postJson(`${base}/v1/readings`, JSON.stringify(body))
  return { status: response.status, answer: await response.json() }
}

describe('POST /v1/readings', () => {
  it('gives the same record as the file for cells handed over as ranges', async () => {
    for (const log of madeUpLogs.filter(({ name }) =>
      ['english form', 'german protocol', 'french sheet', 'stacked blocks'].includes(name),
    )) {
      const ranges = rangesOf(await log.write(), log.fileName)
      const { status, answer } = await post({ ranges, layout: log.layout })
      expect(status).toBe(200)
      for (const [index, expected] of log.records.entries())
        expectRecord(answer.tests[index].record, expected)
    }
  })

  it('chooses the layout by its fingerprint and names the cell of every field', async () => {
    const bytes = new Uint8Array(await readFile('test/demo/demo-log.xlsx'))
    const { status, answer } = await post({ ranges: rangesOf(bytes, 'demo-log.xlsx') })
    expect([status, answer.layoutUsed?.name]).toEqual([200, 'demonstration log'])
    expect(answer.tests[0].record).toEqual(JSON.parse(await readFile('test/demo/demo-record.json', 'utf8')))
    expect(answer.tests[0].cells['building.volume_m3']).toBe('Log!B17')
  })

  it('only proposes where no layout fits, and reads by the proposal when told to', async () => {
    const ranges = rangesOf(await englishForm.write(), englishForm.fileName)
    const asked = await post({ ranges })
    expect([asked.status, asked.answer.tests]).toEqual([200, []])
    expect(asked.answer.proposal.guesses.length).toBeGreaterThan(10)
    for (const { reason, confidence } of asked.answer.proposal.guesses) {
      expect(reason.length).toBeGreaterThan(20)
      expect(confidence).toBeGreaterThan(0)
      expect(confidence).toBeLessThan(1)
    }
    const accepted = await post({ ranges, acceptProposal: true })
    expectRecord(accepted.answer.tests[0].record, englishForm.records[0])
    expect(accepted.answer.tests[0].findings[0]).toMatchObject({ rule: 'log-proposal', severity: 'caution' })
  })

  it('tells the stations of a raw series with their uncertainty', async () => {
    const ranges = rangesOf(await seriesSheet.write(), seriesSheet.fileName)
    const { status, answer } = await post({ ranges, layout: seriesSheet.layout })
    expect(status).toBe(200)
    const [stations] = answer.tests[0].stations
    expect(stations.filter(({ kind }: { kind: string }) => kind === 'reading')).toHaveLength(6)
    // Samples swing evenly by 0.5 Pa: s is 0.5·√(80/79), and they are independent, so u = s/√80 (GUM 4.2.3).
    expect(stations[1].pressure.standardUncertainty).toBeCloseTo(
      (0.5 * Math.sqrt(80 / 79)) / Math.sqrt(80),
      12,
    )
  })

  it('answers 422 with field and cell for what cannot be read', async () => {
    const ranges = rangesOf(await englishForm.write(), englishForm.fileName)
    const [range] = ranges
    if (range?.values[9]) range.values[9][1] = '1,234'
    const { status, answer } = await post({ ranges, layout: englishForm.layout })
    expect(status).toBe(422)
    expect(answer.errors).toEqual([
      {
        path: 'runs[0].readings[0].flow_m3_h',
        cell: "'Air test'!B10",
        message: expect.stringMatching(/may be 1234 or 1\.234/),
      },
    ])
    expect((await post({ ranges: [{ sheet: 'Log', address: 'nowhere', values: [[1]] }] })).status).toBe(422)
    expect((await post({ ranges: [], colour: 1 })).answer.errors).toHaveLength(2)
  })
})
