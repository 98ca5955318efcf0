import { parseLayout, readLog } from '@draughtbook/shared-calc/log'
import ExcelJS from 'exceljs'
import { describe, expect, it } from 'vitest'
import { englishForm } from '../logs/english-form'
import { sheetOf } from '../support/book'
import { variants } from './variants'

async function read(change: (typeof variants)[number]['change']) {
  const workbook = new ExcelJS.Workbook()
  await workbook.xlsx.load((await englishForm.write()).slice().buffer)
  change(sheetOf(workbook, 'Air test'), workbook)
  const bytes = new Uint8Array(await workbook.xlsx.writeBuffer())
  return readLog(bytes, englishForm.fileName, { layout: parseLayout(englishForm.layout) })
}

/** What is told of the form as it should be. */
const usual = new Set(['log-layout', "log-unit|note|'Air test'!B6", "log-word|note|'Air test'!E6"])

describe('a log with one fault', () => {
  it.each(variants.filter(({ finding }) => finding))(
    '$name is read and told of',
    async ({ change, finding }) => {
      const { tests } = await read(change)
      const told = (tests[0]?.findings ?? []).map(({ rule, severity, cells = [] }) => ({
        rule,
        severity,
        cells,
      }))
      expect(told).toContainEqual(finding)
    },
  )

  it.each(variants.filter(({ problem }) => problem))('$name is refused', async ({ change, problem }) => {
    const { tests, problems } = await read(change)
    expect(tests.every(({ record }) => record === undefined)).toBe(true)
    expect(problems).toMatchObject([problem])
    expect(problems[0]?.message.length).toBeGreaterThan(10)
  })

  it('has at least 40 variants, and the form without a fault gives none of their findings', async () => {
    const { tests, problems } = await read(() => undefined)
    const told = (tests[0]?.findings ?? []).map(({ rule, severity, cells = [] }) =>
      cells.length > 0 ? [rule, severity, ...cells].join('|') : rule,
    )
    expect(new Set(told)).toEqual(usual)
    expect(problems).toEqual([])
    expect(variants.length).toBeGreaterThanOrEqual(40)
  })
})
