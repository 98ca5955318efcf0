import type { TakeOff } from '@draughtbook/shared-calc'
import { readLines, readRecords } from '@draughtbook/shared-calc/register'
import { makeRerunReport, rerunFile } from '@draughtbook/shared-calc/rerun'
import { writePlanWorkbook, writeTakeOffWorkbook } from '@draughtbook/shared-calc/workbook'
import ExcelJS from 'exceljs'
import { describe, expect, it } from 'vitest'
import { house } from '../site/support/house'
import { planRequest } from '../site/support/plan-request'

const sheets: readonly [string, () => Promise<Uint8Array>, string][] = [
  ['a plan', () => writePlanWorkbook(planRequest), 'this is a Draughtbook plan for a test, not a test'],
  [
    'a take-off',
    () => writeTakeOffWorkbook({ name: 'Invented house', takeOff: house.takeOff as TakeOff }),
    'this is a Draughtbook take-off of volume and areas, not a test',
  ],
]

describe('a workbook for the site that lies among summaries', () => {
  it.each(sheets)('%s is known for what it is, and holds no test', async (_, write, why) => {
    const bytes = await write()
    const report = await makeRerunReport(await rerunFile(bytes, 'site.xlsx'), '2026-11-27')
    expect(report.tests).toEqual([])
    const left = { file: 'site.xlsx', why, expected: true, kind: 'own report' }
    expect(readLines(bytes, 'site.xlsx').leftOut).toEqual([left])
    expect(readRecords(bytes, 'site.xlsx').leftOut).toEqual([left])
  })

  it('sheets of such names in other people’s workbooks are not', async () => {
    const workbook = new ExcelJS.Workbook()
    for (const name of ['Volume', 'Inputs', 'Working'])
      workbook.addWorksheet(name).getCell('A1').value = 'Test log'
    const [test] = await rerunFile(new Uint8Array(await workbook.xlsx.writeBuffer()), 'own.xlsx')
    expect(test?.why).toContain('this is not a Draughtbook summary')
  })
})
