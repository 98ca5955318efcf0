import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { downloadOf, field, LOG_INPUT, outcome, step } from './support/steps.js'
import { World } from './support/world.js'

/** The machine may be busy with other tests. */
const SOON = { timeout: 60_000 }

let world: World
beforeAll(async () => {
  world = await World.start()
})
afterAll(() => world?.stop())

/** An invented house: it leaks 30·Δp^0.65 m³/h, exactly. */
const COEFFICIENT = 30
const EXPONENT = 0.65
const VOLUME_m3 = 400
const PRESSURES = [60, 55, 50, 45, 40, 35, 30, 25, 20, 15]
const flowAt = (pressure: number): string => (COEFFICIENT * pressure ** EXPONENT).toFixed(1)

async function typeReadings(page: Page, pressures: readonly number[]): Promise<void> {
  for (const pressure of pressures)
    await page.keyboard.type(`${pressure}\n${flowAt(pressure).replace('.', ',')}\n`)
}

async function fillNeeded(page: Page): Promise<void> {
  await field(page, 'Building *').fill('Plot 12 (invented)')
  await field(page, 'Internal volume').fill(String(VOLUME_m3))
  await field(page, 'Test date').fill('2026-10-14')
  await field(page, 'Target').first().selectOption('passive-house-new')
  await step(page, 'On site')
  await field(page, 'Indoor temperature').fill('20')
  await field(page, 'Outdoor temperature').fill('20')
  await field(page, 'Barometric pressure').fill('1013,25 hPa')
}

describe('a test as a file', () => {
  it('is saved, removed from the browser, and opened again in another browser with nothing lost', async () => {
    const { page } = await world.open()
    await fillNeeded(page)
    await page.getByLabel('Pressure, reading 1', { exact: true }).focus()
    await typeReadings(page, PRESSURES.slice(0, 5))
    await outcome(page).waitFor()
    const before = await outcome(page).textContent()
    await page.getByRole('button', { name: 'All tests' }).click()
    const row = page.locator('.kept-test', { hasText: 'Plot 12 (invented)' })
    await row.locator('.kept-parts', { hasText: '14 October 2026' }).waitFor()
    await row.getByRole('button', { name: /^Remove/ }).click()
    const { name, bytes } = await downloadOf(page, () =>
      row.getByRole('button', { name: 'Save as a file first' }).click(),
    )
    expect(name).toBe('Plot-12-invented-2026-10-14-test.zip')
    await row.getByRole('button', { name: 'Remove from this device' }).click()
    await row.waitFor({ state: 'detached' })
    await page.getByRole('button', { name: 'Test', exact: true }).click()
    await outcome(page).waitFor({ state: 'detached' })
    const { page: office } = await world.open()
    await office.setInputFiles(LOG_INPUT, { name, mimeType: 'application/zip', buffer: Buffer.from(bytes) })
    await outcome(office).waitFor()
    expect(await outcome(office).textContent()).toBe(before)
    await office.setInputFiles(LOG_INPUT, {
      name: 'other.json',
      mimeType: 'application/json',
      buffer: Buffer.from('{"format":"something else"}'),
    })
    await office.getByRole('alert').getByText('other.json is not a test saved here').waitFor()
    expect(await outcome(office).textContent()).toBe(before)
  })
})

describe('values that cannot be right', () => {
  it('asks for the unit of a barometric pressure of 1009 before anything is calculated from it', async () => {
    const { page } = await world.open()
    await step(page, 'On site')
    await field(page, 'Barometric pressure').fill('1009')
    const asked = page.locator('[data-path="conditions.barometricPressure_Pa"]')
    await asked.getByText('1009 Pa is not possible').waitFor()
    await asked.getByRole('button', { name: 'It is 1009 hPa' }).click()
    await asked.getByText('is not possible').waitFor({ state: 'detached' })
    expect(await field(page, 'Unit of Barometric pressure').inputValue()).toBe('hPa')
  })

  it('does not use a pressure of 950 Pa until it is kept, and undoes what was typed', async () => {
    const { page } = await world.open()
    await step(page, 'On site')
    await page.getByLabel('Pressure, reading 1', { exact: true }).focus()
    await page.keyboard.type('50\n400\n950\n700')
    const fault = page.locator('.fault-row', { hasText: '950 Pa is unusually high' })
    await fault.waitFor()
    await fault.getByRole('button', { name: 'Keep 950' }).click()
    await fault.waitFor({ state: 'detached' })
    await page.getByRole('button', { name: 'Remove reading 1' }).click()
    expect(await page.getByLabel('Pressure, reading 1', { exact: true }).inputValue()).toBe('950')
    await page.keyboard.press('Control+z')
    await expect
      .poll(() => page.getByLabel('Pressure, reading 1', { exact: true }).inputValue(), SOON)
      .toBe('50')
  })
})
