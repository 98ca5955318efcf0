import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { field, step } from './support/steps.js'
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
})
