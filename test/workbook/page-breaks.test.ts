import { readFile } from 'node:fs/promises'
import { parsePlan } from '@draughtbook/shared-calc'
import { writePlanWorkbook } from '@draughtbook/shared-calc/workbook'
import ExcelJS, { type Worksheet } from 'exceljs'
import { expect, it } from 'vitest'
import { setUpPage } from '../../shared-calc/src/reports/workbook/page'
import { headingRow } from '../../shared-calc/src/reports/workbook/styles'

/** A sheet of one-line rows with a heading in every row of `heads`. */
function sheetOf(rows: number, heads: readonly number[], wrapped: readonly number[] = []): Worksheet {
  const sheet = new ExcelJS.Workbook().addWorksheet('Sheet')
  sheet.columns = [40, 13].map((width) => ({ width }))
  for (let row = 1; row <= rows; row += 1) sheet.getCell(row, 1).value = `row ${row}`
  for (const row of wrapped) sheet.getCell(row, 1).alignment = { wrapText: true }
  for (const row of heads) headingRow(sheet, row, `heading ${row}`, 2)
  setUpPage(sheet, { landscape: false, title: 'Sheet', lastRow: rows, lastColumn: 2 })
  return sheet
}

/** Last rows of the pages. */
const breaksOf = (sheet: Worksheet): number[] =>
  (sheet as unknown as { rowBreaks: { id: number }[] }).rowBreaks.map(({ id }) => id)

// A4 is 841.9 points high; margins of 0.55 and 0.6 inch leave 759.1. Rows of the body font are 12.75 points high.
const ROWS_OF_A_PAGE = Math.floor(759.1 / 12.75)

it('every page has its own break, so that no program ends it elsewhere', () => {
  const breaks = breaksOf(sheetOf(200, []))
  expect(breaks).toEqual([1, 2, 3].map((page) => page * ROWS_OF_A_PAGE))
})

it('a heading does not stand at the foot of a page', () => {
  for (const head of [58, 59, 60]) {
    const [first] = breaksOf(sheetOf(120, [head]))
    expect([head, first]).toEqual([head, Math.min(head - 1, ROWS_OF_A_PAGE)])
  }
})

it('where only the program knows how high a row is, it ends full pages itself', () => {
  expect(breaksOf(sheetOf(200, [], [5]))).toEqual([])
})

it('a day and a truth value are also in words, live, beside the cell that holds them as recorded', async () => {
  const plan = parsePlan(JSON.parse(await readFile('test/demo/demo-plan.json', 'utf8')))
  const workbook = new ExcelJS.Workbook()
  await workbook.xlsx.load((await writePlanWorkbook(plan)) as unknown as ArrayBuffer)
  const said = new Map<unknown, unknown>()
  workbook.getWorksheet('Inputs')?.eachRow((row) => said.set(row.getCell(2).value, row.getCell(3).value))
  // The day of the demo plan is 2026-11-30.
  expect(said.get('2026-11-30')).toMatchObject({ result: '30 November 2026' })
})
