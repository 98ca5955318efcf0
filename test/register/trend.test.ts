import { mkdtemp, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import {
  makeRegister,
  readTrend,
  type TestLine,
  writeRegisterWorkbook,
} from '@draughtbook/shared-calc/register'
import { writeSummaryWorkbook } from '@draughtbook/shared-calc/workbook'
import ExcelJS from 'exceljs'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { inventedRecord } from '../archive/invented-record'
import { commandLine } from '../service/support/command-line'
import { compareCached } from '../support/formula-cells'
import { inventedHouses } from './invented-lines'

/** The tests of October, said to be of another month. */
const monthOf = (month: string, houses: number): TestLine[] =>
  inventedHouses(houses)
    .flatMap(({ lines }) => lines)
    .filter(({ date }) => date.startsWith('2026-10'))
    .map((line) => ({
      ...line,
      building: `${line.building} (${month})`,
      file: `${month}/${line.file}`,
      date: line.date.replace('2026-10', month),
      recordDigest: `${month} ${line.recordDigest}`,
      readingsDigest: `${month} ${line.readingsDigest}`,
      ...(line.testNumber !== undefined && { testNumber: `${month} ${line.testNumber}` }),
    }))

const lines = [...monthOf('2026-08', 20), ...monthOf('2026-09', 31), ...monthOf('2026-10', 26)]
const october = makeRegister(lines, [], { month: '2026-10', asOf: '2026-10-31' })

describe('months in the register', () => {
  it('have the figures of their own registers', () => {
    expect(october.trend.map(({ month }) => month)).toEqual(['2026-08', '2026-09', '2026-10'])
    for (const { month, ...figures } of october.trend) {
      const rows = lines.filter(({ date }) => date.startsWith(month))
      const { overall } = makeRegister(lines, [], { month, asOf: '2026-10-31' })
      expect(figures.tests).toBe(rows.length)
      expect(figures).toMatchObject({
        meets: overall.meets,
        firstMet: overall.firstMet,
        billable: overall.billable,
      })
    }
  })

  it('are taken over from an earlier register where their tests are not given, and are not counted twice', async () => {
    const before = makeRegister(lines, [], { month: '2026-09', asOf: '2026-09-30' })
    const previous = readTrend(await writeRegisterWorkbook(before), 'september.xlsx')
    const own = monthOf('2026-10', 26)
    const alone = makeRegister(own, [], { month: '2026-10', asOf: '2026-10-31', previous })
    expect(alone.trend.map(({ month, from }) => [month, from])).toEqual([
      ['2026-08', 'september.xlsx'],
      ['2026-09', 'september.xlsx'],
      ['2026-10', undefined],
    ])
    const figures = (trend: typeof alone.trend) => trend.map(({ from: _, ...rest }) => rest)
    expect(figures(alone.trend)).toEqual(figures(october.trend))
    // A register of August does not show later months.
    const early = makeRegister(monthOf('2026-08', 20), [], { month: '2026-08', asOf: '2026-08-31', previous })
    expect(early.trend.map(({ month }) => month)).toEqual(['2026-08'])
  })

  it('stand on a sheet whose last row follows the totals, with charts', async () => {
    const bytes = await writeRegisterWorkbook(october)
    expect(await compareCached(bytes)).toEqual([])
    const workbook = new ExcelJS.Workbook()
    await workbook.xlsx.load(bytes.slice().buffer)
    const sheet = workbook.getWorksheet('Trends')
    expect(sheet?.getCell('D7').formula).toBe('Totals!$D$5')
    expect(sheet?.getCell('D7').result).toBe(october.overall.meets)
    expect(sheet?.getCell('D6').value).toBe(october.trend[1]?.meets)
  }, 60_000)

  it('are not read from a workbook that is no register', async () => {
    const summary = await writeSummaryWorkbook(inventedRecord(1))
    expect(() => readTrend(summary, 'summary.xlsx')).toThrow(
      /not a Draughtbook register: it has no sheet Trends/,
    )
  })
})

describe('register --previous', () => {
  let folder: string
  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), 'draughtbook-trend-'))
    const record = inventedRecord(1, { date: '2026-10-12' })
    await writeFile(join(folder, 'test.xlsx'), await writeSummaryWorkbook(record))
    const before = makeRegister(monthOf('2026-09', 20), [], { month: '2026-09', asOf: '2026-09-30' })
    await writeFile(join(folder, 'september.xlsx'), await writeRegisterWorkbook(before))
  })
  afterAll(() => rm(folder, { recursive: true, force: true }))

  it('shows the earlier months, and says what it cannot read', async () => {
    const month = ['--month', '2026-10', '--as-of', '2026-10-31', '--json']
    const test = join(folder, 'test.xlsx')
    const done = await commandLine('register', test, ...month, '--previous', join(folder, 'september.xlsx'))
    expect(done.code).toBe(0)
    expect(JSON.parse(done.out).trend).toMatchObject([{ month: '2026-09' }, { month: '2026-10', tests: 1 }])
    const wrong = await commandLine('register', test, ...month, '--previous', test)
    expect([wrong.code, wrong.err.join()]).toEqual([
      2,
      expect.stringContaining('not a Draughtbook register: it has no sheet Trends'),
    ])
    expect(
      (await commandLine('register', test, ...month, '--previous', join(folder, 'none.xlsx'))).code,
    ).toBe(2)
  })
})
