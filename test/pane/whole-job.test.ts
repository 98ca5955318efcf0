import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { evaluate, parseRecord } from '@draughtbook/shared-calc'
import { readSummaryWorkbook } from '@draughtbook/shared-calc/workbook'
import ExcelJS from 'exceljs'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { compareCached } from '../support/formula-cells.js'
import {
  downloadOf,
  field,
  finding,
  openDemo,
  openLog,
  origin,
  outcome,
  pick,
  select,
  step,
  type,
} from './support/steps.js'
import { World } from './support/world.js'

/** The machine may be busy with other tests. */
const SOON = { timeout: 60_000 }

let world: World
beforeAll(async () => {
  world = await World.start()
})
afterAll(() => world?.stop())

const demoRecord = parseRecord(
  JSON.parse(readFileSync(fileURLToPath(new URL('../demo/demo-record.json', import.meta.url)), 'utf8')),
)

describe('the whole job on the page twin', () => {
  it('opens the demo log, finds the readings, breaks a cell, mends it, exports a workbook that recalculates and shows the working with formulas, numbers and sources', async () => {
    const { page, complaints } = await world.open()
    await openDemo(page)
    await expect.poll(() => outcome(page).getAttribute('data-outcome'), SOON).toBe('meets')
    await expect.poll(() => origin(page).getAttribute('data-origin'), SOON).toBe('service')
    const expected = evaluate(demoRecord).results.n50?.value ?? 0
    expect(await outcome(page).textContent()).toContain(`n50 ${expected.toFixed(2)} 1/h`)

    await type(page, 'F8', '9O.3')
    await finding(page, 'unusable-entry').waitFor()
    expect(await finding(page, 'unusable-entry').textContent()).toContain('has the letter O in its number')
    expect(await outcome(page).getAttribute('data-outcome')).toBe('not valid')
    const download = page.getByRole('button', { name: 'Download the summary workbook' })
    await step(page, 'Result')
    expect(await download.isDisabled()).toBe(true)

    await select(page, 'A1')
    await finding(page, 'unusable-entry').getByRole('button', { name: 'Go to Log!F8' }).click()
    expect(await field(page, 'Selected cells').inputValue()).toBe('F8')
    expect(await page.locator('#cell-8-6').getAttribute('class')).toContain('invalidates')

    await type(page, 'F8', '93,0')
    await finding(page, 'unusable-entry').waitFor({ state: 'detached' })
    await expect.poll(() => outcome(page).getAttribute('data-outcome'), SOON).toBe('meets')

    const { name, bytes } = await downloadOf(page, () => download.click())
    expect(name).toMatch(/^House-7-invented-2026-10-14-summary\.xlsx$/)
    expect(await compareCached(bytes, { relative: 1e-9, absolute: 1e-12 })).toEqual([])
    const { record, evaluation } = await readSummaryWorkbook(bytes)
    expect(evaluation?.findings.find(({ rule }) => rule === 'log-unit')?.cells).toContain('Log!B26')
    expect(record).toMatchObject({ building: demoRecord.building, conditions: demoRecord.conditions })

    await page.getByText('Show the working').click()
    const block = page.locator('.block', { hasText: 'Air indoors' })
    await block.locator('summary').click()
    expect(await block.locator('math').count()).toBeGreaterThan(2)
    expect(await block.textContent()).toContain('19.4')
    expect(await block.locator('.source').first().textContent()).not.toBe('')
    expect(complaints).toEqual([])
  })

  it('takes ranges picked by hand and values typed with comma or point', async () => {
    const { page, complaints } = await world.open()
    await openLog(page)
    for (const [role, address] of [
      ['Pressures', 'E6:E15'],
      ['Device pressures', 'F6:F15'],
      ['Device range', 'G6:G15'],
      ['Zero-flow before', 'H6:H17'],
      ['Zero-flow after', 'I6:I17'],
    ] as const) {
      await select(page, address)
      await pick(page, role, 'depressurisation')
    }
    await field(page, 'Indoor temperature').fill('19.4')
    await field(page, 'Outdoor temperature').fill('8,6')
    await field(page, 'Barometric pressure').fill('1004.8 hPa')
    await step(page, 'Before')
    await field(page, 'Building *').fill('Plot 7 (invented)')
    await field(page, 'Internal volume').fill('243,6')
    await field(page, 'Test date *').fill('2026-10-14')
    await page.getByText('Device', { exact: true }).click()
    const ranges = demoRecord.flowDevice?.ranges ?? []
    for (const [index, range] of ranges.entries()) {
      await page.getByText('Add a calibrated range').click()
      const own = page.locator('.sub', { hasText: 'Coefficient' }).nth(index)
      await own
        .locator('input')
        .and(page.getByLabel('Range', { exact: true }))
        .fill(range.label)
      await own.locator('input').and(page.getByLabel('Coefficient')).fill(String(range.coefficient))
      await own
        .locator('input')
        .and(page.getByLabel('Exponent'))
        .fill(String(range.exponent).replace('.', ','))
    }
    await page.getByLabel('Target', { exact: true }).selectOption('passive-house-new')
    await outcome(page).waitFor()
    await step(page, 'Result')
    const expected = evaluate({
      ...demoRecord,
      runs: demoRecord.runs.slice(0, 1),
      building: { name: 'x', volume_m3: 243.6 },
    })
    await expect
      .poll(
        () => page.locator('.step-result .figures tbody tr').first().locator('td').first().textContent(),
        SOON,
      )
      .toBe(expected.runs[0]?.n50?.value.toFixed(2))
    expect(complaints).toEqual([])
  })

  it('asks about a number that may be two, and says what is wrong beside its field', async () => {
    const { page } = await world.open()
    await field(page, 'Internal volume').fill('1,234')
    const fault = page.locator('.field.wrong .fault')
    await fault.waitFor()
    expect(await fault.textContent()).toContain('"1,234" may be 1234 or 1.234')
    expect(await field(page, 'Internal volume').getAttribute('aria-invalid')).toBe('true')
    await field(page, 'Internal volume').fill('12.5 apples')
    await expect.poll(() => fault.textContent(), SOON).toContain('is not a known unit of volume')
  })

  it('gives a running estimate after the first reading and names the next pressure', async () => {
    const { page } = await world.open()
    const log = 'Pressure [Pa];Flow [m³/h]\n-58,3;130\n'
    await openLog(page, { name: 'first.csv', buffer: Buffer.from(log) })
    await select(page, 'A2:A12')
    await pick(page, 'Pressures', 'depressurisation')
    await select(page, 'B2:B12')
    await pick(page, 'Air flows', 'depressurisation')
    await step(page, 'Before')
    await field(page, 'Internal volume').fill('250')
    await step(page, 'On site')
    // Independent arithmetic: one point, exponent 0.65, equal densities: 130·(50/58.3)^0.65/250 = 0.4706 1/h.
    await page.getByText('Running estimate: n50 ≈ 0.471 1/h').waitFor()
    const estimate = page.locator('.estimate')
    expect(await estimate.textContent()).toContain('exponent 0.65 assumed')
    expect(await estimate.textContent()).toContain('Not a result')
    await page.locator('.next', { hasText: /Next: about\s+−\d+ Pa/ }).waitFor()
    await type(page, 'A3', '-49')
    await finding(page, 'log-incomplete').waitFor()
    await type(page, 'B3', '116')
    await page.getByText('2 readings, exponent 0.65 assumed').waitFor()
  })

  it('keeps the log, its changed cells and what was typed with it, and takes all of it up again', async () => {
    const { page } = await world.open()
    await openDemo(page)
    await type(page, 'B17', '250')
    await expect.poll(() => outcome(page).textContent(), SOON).not.toContain('n50 0.47 ')
    const before = await outcome(page).textContent()
    await step(page, 'Before')
    await field(page, 'Why 50 Pa was not reached').fill('atrium (invented)')
    await page.locator('[data-saved="yes"]').waitFor()
    await page.reload()
    await outcome(page).waitFor()
    expect(await outcome(page).textContent()).toBe(before)
    expect(await field(page, 'Why 50 Pa was not reached').inputValue()).toBe('atrium (invented)')
    await select(page, 'B17')
    expect(await page.getByLabel('Content of cell B17', { exact: true }).inputValue()).toBe('250')
    const { name, bytes } = await downloadOf(page, () =>
      page.getByRole('button', { name: 'Save the log with 1 change' }).click(),
    )
    expect(name).toBe('demo-log-corrected.xlsx')
    const book = new ExcelJS.Workbook()
    await book.xlsx.load(bytes.slice().buffer as ArrayBuffer)
    expect(book.getWorksheet('Log')?.getCell('B17').value).toBe(250)
    expect(await page.getByRole('alert').count()).toBe(0)
  })
})
