import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { violations } from '../pane/support/axe.js'
import { shoot } from '../pane/support/pictures.js'
import { openDemo, step } from '../pane/support/steps.js'
import { World } from '../pane/support/world.js'

let world: World
beforeAll(async () => {
  world = await World.start()
})
afterAll(() => world?.stop())

describe('how sure, in the pane', () => {
  it('says the decision in words, draws the budget, confirms it by 100,000 draws in a worker, and takes what is known', async () => {
    const { page } = await world.open('', { viewport: { width: 420, height: 1400 } })
    await openDemo(page)
    await step(page, 'Result')
    await page.locator('summary', { hasText: /Uncertainty/ }).click()
    const sure = page.locator('div.sure')
    await sure.locator('.decision').waitFor()
    expect(await sure.locator('.decision').textContent()).toMatch(
      /n50: meets; probability of meeting the target: more than 99 %/,
    )
    expect(await sure.locator('svg.share-bars .bar').count()).toBeGreaterThan(1)
    await sure.getByRole('button', { name: /Check by simulation/ }).click()
    const drawn = sure.locator('ul[aria-label="By simulation"] li')
    await drawn.first().waitFor({ timeout: 50_000 })
    expect(await drawn.count()).toBeGreaterThanOrEqual(5)
    await sure.scrollIntoViewIfNeeded()
    await shoot(sure, 'uncertainty/pane')

    // What is known of the uncertainties is taken, with a comma too; the defaults stand for the rest.
    await page.locator('summary', { hasText: 'Instrument accuracies' }).click()
    const calibration = page.getByRole('textbox', { name: /^Uncertainty of flow calibration/ })
    expect(await calibration.getAttribute('placeholder')).toBe('0.0289')
    await calibration.fill('0,02')
    await page.locator('div.sure summary', { hasText: 'All causes' }).click()
    const row = page.locator('div.sure tr', { hasText: 'flow calibration' })
    await row.getByText('2.00 %').waitFor()
    expect(await violations(page)).toEqual([])
    await shoot(page.locator('.section-sure'), 'uncertainty/pane-fields')
  })
})
