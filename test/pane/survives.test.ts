import ExcelJS from 'exceljs'
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest'
import {
  downloadOf,
  field,
  finding,
  LOG_INPUT,
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
// A test that fails while the service is stopped must not fail the others.
afterEach(() => world?.startService())
afterAll(() => world?.stop())

/** Invented readings of a leaky shed: 40·Δp^0.65 m³/h, rounded. */
const READINGS = [-65, -56, -47, -38, -29, -20, -12].map((pressure) => [
  pressure,
  Math.round(40 * Math.abs(pressure) ** 0.65 * 10) / 10,
])

async function workbook(fill: (sheet: ExcelJS.Worksheet) => void): Promise<Buffer> {
  const book = new ExcelJS.Workbook()
  fill(book.addWorksheet('Log'))
  return Buffer.from(await book.xlsx.writeBuffer())
}

async function fillNeeded(page: Parameters<typeof field>[0]): Promise<void> {
  await field(page, 'Indoor temperature').fill('20')
  await field(page, 'Outdoor temperature').fill('10')
  await step(page, 'Before')
  await field(page, 'Building *').fill('Shed (invented)')
  await field(page, 'Internal volume').fill('120')
  await field(page, 'Test date').fill('2026-10-14')
  await step(page, 'On site')
}

describe('the pane survives', () => {
  it('a service stopped in mid-use: it goes on by itself, says so, and returns to the service', async () => {
    const { page } = await world.open('', { keepsPage: true })
    await openDemo(page)
    await expect.poll(() => origin(page).getAttribute('data-origin'), SOON).toBe('service')
    await step(page, 'Result')
    const before = await page.locator('.figures .mean').first().textContent()
    // The pane fetches what it needs to work alone in its idle time: on a busy machine that takes a moment.
    await page.locator('html[data-works-alone]').waitFor({ timeout: 60_000 })
    world.stopService()
    await type(page, 'B17', '250')
    await expect.poll(() => origin(page).getAttribute('data-origin'), SOON).toBe('unreachable')
    expect(await origin(page).textContent()).toContain('Calculated on this device with the same formulas')
    const after = await page.locator('.figures .mean').first().textContent()
    expect(after).not.toBe(before)
    // The workbook is written on this computer too.
    const { bytes } = await downloadOf(page, () =>
      page.getByRole('button', { name: 'Download the summary workbook' }).click(),
    )
    expect(bytes.length).toBeGreaterThan(10_000)
    world.startService()
    await type(page, 'B17', '251')
    await expect.poll(() => origin(page).getAttribute('data-origin'), SOON).toBe('service')
  })

  it('a service that takes a second: the result stands at once, and entries made meanwhile win', async () => {
    world.delay_ms = 1000
    try {
      const { page } = await world.open()
      await openDemo(page)
      expect(await origin(page).getAttribute('data-origin')).toBe('asking')
      await type(page, 'B17', '300')
      await type(page, 'B17', '243.6')
      await expect.poll(() => origin(page).getAttribute('data-origin'), SOON).toBe('service')
      expect(await outcome(page).textContent()).toContain('n50 0.47 ')
    } finally {
      world.delay_ms = 0
    }
  })

  it('a sheet of 5,000 rows, of which few are drawn, and a selection of whole columns', async () => {
    const { page, complaints } = await world.open()
    const buffer = await workbook((sheet) => {
      sheet.addRow(['Pressure [Pa]', 'Flow [m³/h]', 'Remark'])
      for (const reading of READINGS) sheet.addRow(reading)
      for (let row = 0; row < 5000; row++) sheet.getCell(row + 20, 3).value = `remark ${row}`
    })
    await openLog(page, { name: 'long.xlsx', buffer })
    expect(await page.locator('.sheet .row').count()).toBeLessThan(80)
    await page.locator('.sheet').evaluate((element) => {
      element.scrollTop = 4900 * 24
    })
    await page.locator('#cell-4910-3', { hasText: 'remark 4890' }).waitFor()
    await select(page, 'A1')
    await page.locator('[role=columnheader]', { hasText: /^A$/ }).click()
    expect(await field(page, 'Selected cells').inputValue()).toBe('A1:A1048576')
    await pick(page, 'Pressures', 'depressurisation')
    await page.locator('[role=columnheader]', { hasText: /^B$/ }).click()
    await pick(page, 'Air flows', 'depressurisation')
    await fillNeeded(page)
    await outcome(page).waitFor()
    await page.getByText('7 readings, −65.0 to −12.0 Pa').waitFor()
    // On site the notes are folded away.
    await page.locator('.notes:visible > summary').click()
    await expect.poll(() => finding(page, 'log-heading').count(), SOON).toBe(2)
    expect(complaints).toEqual([])
  })

  it('merged cells: the block counts once', async () => {
    const { page } = await world.open()
    const buffer = await workbook((sheet) => {
      sheet.addRow(['Pressure [Pa]', 'Flow [m³/h]'])
      for (const reading of READINGS) sheet.addRow(reading)
      sheet.mergeCells('A8:A9')
    })
    await openLog(page, { name: 'merged.xlsx', buffer })
    await select(page, 'A2:A9')
    await pick(page, 'Pressures', 'depressurisation')
    await select(page, 'B2:B9')
    await pick(page, 'Air flows', 'depressurisation')
    await fillNeeded(page)
    await page.getByText('7 readings, −65.0 to −12.0 Pa').waitFor()
    expect(await finding(page, 'unusable-entry').count()).toBe(0)
  })

  it('a workbook without a number', async () => {
    const { page } = await world.open()
    const buffer = await workbook((sheet) => {
      sheet.addRow(['nothing', 'to', 'see'])
    })
    await openLog(page, { name: 'words.xlsx', buffer })
    await page.getByText(/^no table of pressures and air flows was found/i).waitFor()
    await select(page, 'A1:A4')
    await pick(page, 'Pressures', 'depressurisation')
    await select(page, 'B1:B4')
    await pick(page, 'Air flows', 'depressurisation')
    await step(page, 'Result')
    await page.getByText('Still needed for a result').waitFor()
    expect(await outcome(page).count()).toBe(0)
  })

  it('files that are no log, with the reason', async () => {
    const { page } = await world.open()
    await page.setInputFiles(LOG_INPUT, {
      name: 'old.xls',
      mimeType: 'application/vnd.ms-excel',
      buffer: Buffer.from([0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1, 0, 0]),
    })
    await page.getByRole('alert').getByText('save it as .xlsx').waitFor()
    await page.setInputFiles(LOG_INPUT, {
      name: 'cut.xlsx',
      mimeType: 'application/zip',
      buffer: Buffer.from('PK\u0003\u0004 cut off'),
    })
    await expect.poll(() => page.getByRole('alert').textContent(), SOON).not.toContain('save it as .xlsx')
    await openDemo(page)
    expect(await page.getByRole('alert').count()).toBe(0)
  })

  it('storage that is full: it says that entries are not kept, and works on', async () => {
    const { page } = await world.open()
    await page.evaluate(() => {
      IDBObjectStore.prototype.put = () => {
        throw new DOMException('full', 'QuotaExceededError')
      }
    })
    await openDemo(page)
    await page.locator('[data-saved="no"]').waitFor()
    expect(await page.locator('[data-saved]').textContent()).toContain('entries not saved')
  })
})
