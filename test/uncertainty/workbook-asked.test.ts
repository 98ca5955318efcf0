import { parseRecord } from '@draughtbook/shared-calc'
import { rerunFile } from '@draughtbook/shared-calc/rerun'
import { writeSummaryWorkbook } from '@draughtbook/shared-calc/workbook'
import ExcelJS from 'exceljs'
import { describe, expect, it } from 'vitest'
import { tasks } from '../../service/src/jobs/tasks.js'
import { inventedRecord } from '../archive/invented-record'
import { Tamperer, withNumber } from '../archive/tamper'
import { compareCached } from '../support/formula-cells'

const record = parseRecord(inventedRecord(1))

const sheetsOf = async (bytes: Uint8Array): Promise<string[]> => {
  const workbook = new ExcelJS.Workbook()
  await workbook.xlsx.load(new Uint8Array(bytes).buffer)
  return workbook.worksheets.map(({ name }) => name)
}

describe('a summary workbook with the uncertainty asked for', () => {
  it('holds the sheet for a record@1 too, in live formulas; without asking it does not', async () => {
    expect(record.format).toBe('draughtbook/record@1')
    const asked = await writeSummaryWorkbook(record, { uncertainty: true })
    expect(await sheetsOf(asked)).toContain('Uncertainty')
    expect(await compareCached(asked, { relative: 1e-9, absolute: 1e-11 })).toEqual([])
    const plain = await writeSummaryWorkbook(record)
    expect(await sheetsOf(plain)).not.toContain('Uncertainty')
    expect(await writeSummaryWorkbook(record, { uncertainty: false })).toEqual(plain)
  })

  it('is re-run as agreeing, and as differing where a budget was changed', async () => {
    const asked = await writeSummaryWorkbook(record, { uncertainty: true })
    const [test] = await rerunFile(asked, 'archive/asked.xlsx')
    expect(test).toMatchObject({ outcome: 'exactly as issued', differences: [] })
    const book = new Tamperer(asked)
    const cell = book.cells().find(({ sheet, xml }) => sheet === 'Uncertainty' && xml.includes('<f>'))
    if (!cell) throw new Error('sheet Uncertainty has no formula')
    const [changed] = await rerunFile(book.with(cell, withNumber(cell, 0.123)), 'archive/changed.xlsx')
    expect(changed?.outcome).not.toBe('exactly as issued')
    expect(changed?.differences.length).toBeGreaterThan(0)
  })

  it('comes from the service where the request asks', async () => {
    const body = new TextEncoder().encode(JSON.stringify(record))
    expect(await sheetsOf((await tasks.workbook({ body, uncertainty: true })).bytes)).toContain('Uncertainty')
    expect(await sheetsOf((await tasks.workbook({ body })).bytes)).not.toContain('Uncertainty')
  })
})
