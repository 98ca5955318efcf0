import { writeSummaryWorkbook } from '@draughtbook/shared-calc/workbook'
import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { inventedRecord } from '../archive/invented-record.js'
import { field, LOG_INPUT, step, toView } from './support/steps.js'
import { World } from './support/world.js'

let world: World
beforeAll(async () => {
  world = await World.start()
})
afterAll(() => world?.stop())

/** Types into a field and takes it out again, as whoever has mistyped does. */
async function typeAndEmpty(page: Page, label: string, text: string): Promise<void> {
  const box = field(page, label)
  await box.fill(text)
  await box.blur()
  await box.fill('')
  await box.blur()
}

const isOpen = (box: SVGElement | HTMLElement): boolean => (box as HTMLDetailsElement).open

describe('what the hand has unfolded stays so when a field in it is emptied', () => {
  it('the limit of your own and a calibrated range', async () => {
    const { page, complaints } = await world.open('', { viewport: { width: 350, height: 800 } })
    await step(page, 'Before')
    await page.getByText('A limit of your own').click()
    await typeAndEmpty(page, 'Limit', '0.6')
    expect(await field(page, 'Limit').isVisible()).toBe(true)

    await page.getByRole('heading', { name: 'Device', exact: true }).click()
    await page.getByText('Add a calibrated range').click()
    await typeAndEmpty(page, 'Lowest flow', '15')
    expect(await field(page, 'Lowest flow').isVisible()).toBe(true)
    expect(complaints).toEqual([])
  })

  it('what became of each entry of a log, when another of its tests is chosen', async () => {
    const { page } = await world.open()
    await page.setInputFiles(LOG_INPUT, 'test/log/samples/16b-two-houses-one-sheet.xlsx')
    await page.getByText('This log holds 2 tests. Which one?').waitFor()
    const fold = page.locator('details', { hasText: 'left out' }).first()
    expect(await fold.evaluate(isOpen)).toBe(true)
    await fold.locator('summary').click()
    await page.locator('.tests button').nth(1).click()
    await page.getByRole('button', { name: 'Accept and calculate' }).waitFor()
    expect(await fold.evaluate(isOpen)).toBe(false)
  })

  it('what a register leaves out, when its rows are filtered', async () => {
    const { page } = await world.open()
    await toView(page, 'Month')
    await page.getByLabel('Workbooks').setInputFiles([
      { name: 'plot.xlsx', mimeType: '', buffer: Buffer.from(await writeSummaryWorkbook(inventedRecord(1))) },
      { name: 'fees.csv', mimeType: '', buffer: Buffer.from('number,fee') },
    ])
    const fold = page.locator('details', { hasText: 'Left out: 1' })
    await fold.waitFor()
    expect(await fold.evaluate(isOpen)).toBe(true)
    await fold.locator('summary').click()
    await page.getByLabel('Filter').fill('plot')
    await page.getByText('of 1 shown').waitFor()
    expect(await fold.evaluate(isOpen)).toBe(false)
  })
})
