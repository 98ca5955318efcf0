import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { home, workbook } from './support/invented-homes.js'
import { openDemo, step, toView } from './support/steps.js'
import { World } from './support/world.js'

let world: World
beforeAll(async () => {
  world = await World.start()
})
afterAll(() => world?.stop())

/** Everything on show that can be worked with the mouse and that Tab does not come to. */
async function outOfReach(page: Page): Promise<string[]> {
  const count = await page.evaluate(async () => {
    const folded = () => [...document.querySelectorAll('details')].filter(({ open }) => !open)
    // What is folded away is drawn when it is unfolded, and may hold more to unfold.
    for (let closed = folded(); closed.length > 0; closed = folded()) {
      const unfolded = closed.map((one) => new Promise((done) => one.addEventListener('toggle', done)))
      for (const one of closed) one.open = true
      await Promise.all(unfolded)
    }
    const all = [
      ...document.querySelectorAll<HTMLElement>(
        'button:enabled, input:enabled, select:enabled, textarea:enabled, summary, a[href], [role=grid], [tabindex="0"]',
      ),
    ].filter((one) => one.getClientRects().length > 0)
    for (const one of all) one.dataset.reach = 'no'
    document.addEventListener('focusin', ({ target }) => {
      const one = target as HTMLElement | SVGElement
      if (one.dataset.reach) one.dataset.reach = 'yes'
    })
    document.body.tabIndex = -1
    document.body.focus()
    return all.length
  })
  const notYet = () =>
    page.evaluate(() =>
      [...document.querySelectorAll<HTMLElement>('[data-reach=no]')]
        .filter((one) => one.getClientRects().length > 0)
        .map((one) => one.outerHTML.slice(0, 140)),
    )
  // Dates have several stops, and so have boxes that scroll. Tab is held down, as far as all could be reached.
  let left = await notYet()
  for (let pressed = 0; left.length > 0 && pressed < 2 * count + 40; left = await notYet()) {
    await Promise.all(left.map(() => page.keyboard.down('Tab')))
    pressed += left.length
  }
  await page.keyboard.up('Tab')
  return left
}

describe('by keyboard alone', () => {
  it('every control of every step is reached', async () => {
    const { page } = await world.open('', { viewport: { width: 900, height: 900 } })
    await openDemo(page)
    for (const name of ['Before', 'On site', 'Result'] as const) {
      await step(page, name)
      expect(await outOfReach(page), name).toEqual([])
    }
  })

  it('every control of the list of tests and of the views of the office is reached', async () => {
    const { page } = await world.open('', { viewport: { width: 350, height: 900 } })
    await openDemo(page)
    await page.getByRole('button', { name: 'All tests' }).click()
    await page.locator('.kept-test').first().waitFor()
    expect(await outOfReach(page), 'All tests').toEqual([])
    const files = [
      await workbook('flat-1.xlsx', home(1, 0.42, 'fabric')),
      await workbook('flat-2.xlsx', home(2, 0.5, 'fabric')),
    ]
    for (const [name, shown] of [
      ['Month', '.sortable'],
      ['Building', '.several'],
      ['Stages', '.several'],
      ['Re-run', '.sortable'],
    ] as const) {
      await toView(page, name)
      await page.getByLabel('Workbooks').setInputFiles(files)
      await page.locator(shown).first().waitFor()
      expect(await outOfReach(page), name).toEqual([])
    }
  })
})
