import { rerunFile } from '@draughtbook/shared-calc/rerun'
import { writeSummaryWorkbook } from '@draughtbook/shared-calc/workbook'
import ExcelJS from 'exceljs'
import { describe, expect, it } from 'vitest'
import { house } from './support/house.js'

async function rerun(bytes: Uint8Array) {
  const [test] = await rerunFile(bytes, 'archived.xlsx')
  if (!test) throw new Error('no test came back')
  return test
}

describe('re-run of an archived record@2', () => {
  it('agrees in every figure and cell, those of take-off, plan and leaks too', async () => {
    const test = await rerun(await writeSummaryWorkbook(house))
    expect(test.differences).toEqual([])
    expect(test.outcome).toBe('exactly as issued')
  })

  it('finds a figure that was typed over on the sheet Leaks', async () => {
    const workbook = new ExcelJS.Workbook()
    await workbook.xlsx.load(new Uint8Array(await writeSummaryWorkbook(house)).buffer)
    const cell = workbook.getWorksheet('Leaks')?.getCell('C5')
    if (!cell) throw new Error('no sheet Leaks')
    cell.value = 0
    const test = await rerun(new Uint8Array((await workbook.xlsx.writeBuffer()) as ArrayBuffer))
    expect(JSON.stringify(test.differences)).toContain('Leaks')
    expect(test.outcome).not.toBe('exactly as issued')
  })
})
