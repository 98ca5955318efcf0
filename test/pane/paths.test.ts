import { readFile } from 'node:fs/promises'
import { fileURLToPath } from 'node:url'
import type { Locator, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { home, workbook } from './support/invented-homes.js'
import { outcome, step, toView } from './support/steps.js'
import { World } from './support/world.js'

const DEMO = new URL('../demo/demo-log.xlsx', import.meta.url)
const SAMPLE = (name: string) => fileURLToPath(new URL(`../log/samples/${name}`, import.meta.url))
const GUIDE = new URL('../../DEVELOPERS.md', import.meta.url)

let world: World
let guide: string
beforeAll(async () => {
  world = await World.start()
  guide = await readFile(GUIDE, 'utf8')
})
afterAll(() => world?.stop())

/** Clicks and taps of a person; what the page clicks by itself does not count. */
async function counting(page: Page): Promise<() => Promise<number>> {
  await page.evaluate(() => {
    const seen = window as unknown as { clicks: number }
    seen.clicks = 0
    window.addEventListener('click', (event) => {
      // A button pressed with Enter tells of a click too, of none of a mouse (UI Events, `detail`).
      if (event.isTrusted && event.detail > 0) seen.clicks += 1
    })
  })
  return () => page.evaluate(() => (window as unknown as { clicks: number }).clicks)
}

/** Chooses files where a click asks for them. */
async function choose(page: Page, opener: Locator, files: Parameters<Page['setInputFiles']>[1]) {
  // Listened for first: a click before that opens a dialog that nobody answers.
  const [chooser] = await Promise.all([page.waitForEvent('filechooser'), opener.click()])
  await chooser.setFiles(files)
}

const download = (page: Page, name: string) =>
  Promise.all([page.waitForEvent('download'), page.getByRole('button', { name }).click()])

/** What the guide says of a path. */
function told(path: string): number {
  const [, , now] =
    guide
      .split('\n')
      .find((line) => line.startsWith(`| ${path} |`))
      ?.split('|')
      .slice(1)
      .map((cell) => cell.trim()) ?? []
  if (!/^\d+$/.test(now ?? '')) throw new Error(`the guide has no path ${path}`)
  return Number(now)
}

describe('clicks of the paths in the guide', () => {
  it('tester: a log opened, the verdict, workbook and PDF', async () => {
    const { page } = await world.open()
    const clicks = await counting(page)
    await choose(page, page.getByRole('button', { name: 'Open a test log' }), {
      name: 'demo-log.xlsx',
      mimeType: 'application/octet-stream',
      buffer: await readFile(DEMO),
    })
    await page.getByRole('button', { name: 'Accept and calculate' }).click()
    await outcome(page).waitFor()
    expect(await clicks()).toBe(told('log to verdict'))
    await step(page, 'Result')
    await download(page, 'Download the summary workbook')
    await download(page, 'Download as PDF')
    expect(await clicks()).toBe(told('log to workbook and PDF'))
  })

  it('tester: a log with questions, answered with Enter alone after the first, and a log of several tests', async () => {
    const { page } = await world.open()
    const clicks = await counting(page)
    await choose(page, page.getByRole('button', { name: 'Open a test log' }), SAMPLE('20-raw-series.csv'))
    await page.locator('.own-answer input').first().click()
    const answers = { temperature: '15', volume: '400' }
    for (const asked of ['indoor temperature', 'outdoor temperature', 'internal volume']) {
      await page.locator('.question', { hasText: asked }).first().waitFor()
      await page.keyboard.type(`${answers[asked.includes('volume') ? 'volume' : 'temperature']}\n`)
      await page
        .locator('.question, .questions li', { hasText: asked })
        .first()
        .waitFor({ state: 'detached' })
    }
    await expect
      .poll(() => page.evaluate(() => document.activeElement?.textContent), { timeout: 30_000 })
      .toBe('Accept and calculate')
    await page.keyboard.press('Enter')
    await outcome(page).waitFor()
    expect(await clicks()).toBe(told('log with questions to verdict'))

    const before = await clicks()
    await choose(
      page,
      page.getByRole('button', { name: 'Open a test log' }),
      SAMPLE('16b-two-houses-one-sheet.xlsx'),
    )
    await page.locator('.proposal .tests button').first().click()
    await page.getByRole('button', { name: 'Accept and calculate' }).click()
    await outcome(page).waitFor()
    expect((await clicks()) - before).toBe(told('log of several tests to verdict'))
  })

  it('office: the month’s register, and a building', async () => {
    const { page } = await world.open()
    const files = [
      await workbook('flat-1.xlsx', home(1, 0.42, 'acceptance')),
      await workbook('flat-2.xlsx', home(2, 0.5, 'acceptance')),
    ]
    const clicks = await counting(page)
    await toView(page, 'Month')
    await choose(page, page.getByLabel('Workbooks'), files)
    await page.locator('.totals').waitFor()
    await download(page, 'Download the register')
    expect(await clicks()).toBe(told('workbooks to register'))
    const before = await clicks()
    await toView(page, 'Building')
    await choose(page, page.getByLabel('Workbooks'), files)
    await page.locator('.headline').waitFor()
    await download(page, 'Download the building')
    expect((await clicks()) - before).toBe(told('workbooks to building'))
  })

  it('auditor: what differs in archived workbooks', async () => {
    const { page } = await world.open()
    const clicks = await counting(page)
    await toView(page, 'Re-run')
    await choose(page, page.getByLabel('Workbooks'), [await workbook('flat-1.xlsx', home(1, 0.42))])
    await page.locator('.headline').waitFor()
    expect(await clicks()).toBe(told('workbooks to what differs'))
    await download(page, 'Download the re-run')
    expect(await clicks()).toBe(told('workbooks to the re-run to sign'))
  })
})
