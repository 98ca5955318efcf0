import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { dep, HEADINGS, sheetOfForm, zeroRows } from '../log/odd/house.js'
import type { Rows } from '../log/support/book.js'
import { finding, LOG_INPUT, openDemo, outcome } from './support/steps.js'
import { World } from './support/world.js'

let world: World
beforeAll(async () => {
  world = await World.start()
})
afterAll(() => world?.stop())

const SOON = { timeout: 60_000 }
const SLIPPED = 3
const AS_ANSWERED = /as you answered/

/** The log of a house in which one pressure was typed ten times too large. */
const slippedLog = async () => {
  const readings = dep.readings.map(([p, q], index) => (index === SLIPPED ? [Math.round(p * 10), q] : [p, q]))
  const rows: Rows = [['Depressurisation'], ...zeroRows(dep), HEADINGS, ...readings]
  return Buffer.from(await sheetOfForm(rows))
}

const open = async (viewport = { width: 350, height: 900 }, name = 'log.xlsx') => {
  const { page, complaints } = await world.open('', { viewport })
  await page.setInputFiles(LOG_INPUT, {
    name,
    mimeType: 'application/octet-stream',
    buffer: await slippedLog(),
  })
  const question = page.locator('[data-question="readings.remarked"]')
  await question.waitFor()
  return { page, complaints, question }
}

describe('a reading that is ten times too large', () => {
  it('is asked about on the page, and nothing is said to be answered before it is', async () => {
    const { page, complaints, question } = await open()
    expect(await question.textContent()).toContain('The pressure is about ten times what fits the air flow.')
    expect(await page.locator('body').textContent()).not.toMatch(AS_ANSWERED)
    expect(await page.getByRole('button', { name: 'Accept and calculate' }).count()).toBe(0)
    await question.getByRole('button', { name: 'no: leave it out' }).click()
    await page.locator('[data-warning="log-row-left-out"]', { hasText: AS_ANSWERED }).waitFor()
    await page.getByRole('button', { name: 'Accept and calculate' }).click()
    await outcome(page).waitFor()
    await expect.poll(() => page.locator('.standing').textContent(), SOON).not.toContain('was used, as you')
    expect(complaints).toEqual([])
  })

  it('is said to be used, with what to do, once that is answered', async () => {
    const { page, question } = await open({ width: 800, height: 900 })
    await question.getByRole('button', { name: 'yes: it counts like the others' }).click()
    await page.getByRole('button', { name: 'Accept and calculate' }).click()
    await outcome(page).waitFor()
    const said = await finding(page, 'log-row-doubt').textContent()
    expect(said).toContain('The reading was used, as you answered')
    expect(said).toContain('If it does not count, change your answer.')
  })
})

it('a character of a file’s name that turns the direction of writing is shown, and turns nothing', async () => {
  const { page } = await open(undefined, 'plot\u202exslx.1.xlsx')
  const shown = (await page.locator('body').textContent()) ?? ''
  expect(shown).toContain('plot\\u202exslx.1.xlsx')
  expect(shown).not.toContain('\u202e')
})

it('a number and its unit stay on one line in the narrowest window', async () => {
  const { page } = await world.open('', { viewport: { width: 350, height: 900 } })
  await openDemo(page)
  await outcome(page).waitFor()
  const lines = await page
    .locator('.standing .unbroken')
    .evaluateAll((parts) => parts.map((part) => [part.textContent, part.getClientRects().length]))
  // The demo log states 3.4 m/s; the limit of the method is 3 m/s.
  expect(lines).toEqual([
    ['3.4 m/s', 1],
    ['3 m/s', 1],
  ])
})
