import {
  makeRegister,
  type Register,
  type RegisterRow,
  readLines,
  writeRegisterWorkbook,
} from '@draughtbook/shared-calc/register'
import { writeSummaryWorkbook } from '@draughtbook/shared-calc/workbook'
import ExcelJS from 'exceljs'
import { beforeAll, describe, expect, it } from 'vitest'
import { inventedMonth } from '../archive/invented-month'
import { inventedRecord } from '../archive/invented-record'
import { compareCached, readCells } from '../support/formula-cells'
import { toPdf } from '../support/libreoffice'
import { pdfPages } from '../support/pdf-pages'
import { cellUnder } from './cell-under'

let register: Register
let bytes: Uint8Array

beforeAll(async () => {
  const lines = []
  for (const [i, record] of inventedMonth(40).entries())
    lines.push(
      ...readLines(await writeSummaryWorkbook(record), `2026-10/${record.building.site}/${i + 1}.xlsx`).lines,
    )
  register = makeRegister(lines, [{ file: '2026-10/cut.xlsx', why: 'the file is incomplete or damaged' }], {
    asOf: '2026-10-31',
  })
  bytes = await writeRegisterWorkbook(register)
})

describe('the register workbook', () => {
  it('holds formulas that LibreOffice works out to the stored results, in every sheet', async () => {
    const cells = await readCells(bytes)
    expect(new Set(cells.map(({ sheet }) => sheet))).toEqual(
      new Set(['Register', 'Totals', 'Trends', 'Stages', 'To do', 'Chart data']),
    )
    expect(await compareCached(bytes)).toEqual([])
  })

  it('shows each figure of each test as it was issued', async () => {
    const sheet = (await load(bytes)).getWorksheet('Register')
    const heads = sheet?.getRow(6).values as (string | undefined)[]
    const column = (head: string) => heads.findIndex((one) => one?.startsWith(head))
    const figures: [string, (row: RegisterRow) => number | undefined][] = [
      ['n50', ({ results }) => results.n50],
      ['qE50', ({ results }) => results.qE50],
      ['qF50', ({ results }) => results.qF50],
      ['q50', ({ results }) => results.q50],
      ['ELA 4 Pa', ({ results }) => results.ela4],
      ['Limit', ({ judged }) => judged?.limit],
    ]
    for (const row of register.rows)
      for (const [head, value] of figures)
        expect(sheet?.getCell(6 + row.row, column(head)).value, `${head} of ${row.file}`).toBe(value(row))
  })

  it('carries a corrected value through verdict, totals and chart data', async () => {
    const met = register.rows.find(
      ({ outcome, role, counts }) => outcome === 'meets' && role === 'first test' && counts,
    )
    if (!met) throw new Error('no test met its target')
    const workbook = await load(bytes)
    const sheet = workbook.getWorksheet('Register')
    const value = sheet && cellUnder(sheet, 'Value', met.row)
    if (!sheet || !value) throw new Error('no register')
    expect(value.value).toBe(met.judged?.value)
    value.value = 5
    const cells = await readCells(new Uint8Array(await workbook.xlsx.writeBuffer()))
    const now = (place: string) =>
      cells.find(({ sheet, address }) => `${sheet}!${address}` === place)?.recalculated
    expect(now(`Register!${cellUnder(sheet, 'Verdict', met.row).address}`)).toBe('fails')
    // All tests: columns D and E count those that meet and miss.
    expect(now('Totals!D5')).toBe(register.overall.meets - 1)
    expect(now('Totals!E5')).toBe(register.overall.misses + 1)
    expect(now('Totals!I5')).toBe(register.overall.firstMet - 1)
  })

  it('lists what was left out', async () => {
    const sheet = (await load(bytes)).getWorksheet('Left out')
    expect(sheet?.getCell('A4').value).toBe('2026-10/cut.xlsx')
    expect(sheet?.getCell('C4').value).toBe('the file is incomplete or damaged')
  })

  it('is the same to the byte when it is written again', async () => {
    expect(Buffer.compare(await writeRegisterWorkbook(register), bytes)).toBe(0)
  })

  it('can be written with no test, and with tests that have no target', async () => {
    const empty = makeRegister([], [], { asOf: '2026-10-31' })
    expect(await compareCached(await writeRegisterWorkbook(empty))).toEqual([])
    const record = inventedRecord(3)
    delete record.target
    const { lines } = readLines(await writeSummaryWorkbook(record), 'one.xlsx')
    const plain = makeRegister(lines, [], { asOf: '2026-10-31' })
    expect(await compareCached(await writeRegisterWorkbook(plain))).toEqual([])
  })

  it('prints its sheets on paper to check', async () => {
    const pages = await pdfPages(await toPdf(bytes), 'register')
    expect(pages.length).toBeGreaterThanOrEqual(5)
  })
})

async function load(content: Uint8Array): Promise<ExcelJS.Workbook> {
  const workbook = new ExcelJS.Workbook()
  await workbook.xlsx.load(content.slice().buffer)
  return workbook
}
