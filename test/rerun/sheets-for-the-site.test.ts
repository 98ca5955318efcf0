import type { TakeOff } from '@draughtbook/shared-calc'
import { readLines, readRecords } from '@draughtbook/shared-calc/register'
import { makeRerunReport, rerunFile } from '@draughtbook/shared-calc/rerun'
import { writePlanWorkbook, writeTakeOffWorkbook } from '@draughtbook/shared-calc/workbook'
import { describe, expect, it } from 'vitest'
import { house } from '../site/support/house'
import { planRequest } from '../site/support/plan-request'

const sheets: readonly [string, () => Promise<Uint8Array>, string][] = [
  ['a plan', () => writePlanWorkbook(planRequest), 'this is a Draughtbook test plan, not a test'],
  [
    'a take-off',
    () => writeTakeOffWorkbook({ name: 'Invented house', takeOff: house.takeOff as TakeOff }),
    'this is a Draughtbook take-off, not a test',
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
})
