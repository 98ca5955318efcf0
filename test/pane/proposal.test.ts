import { readFile } from 'node:fs/promises'
import { fileURLToPath } from 'node:url'
import { parsePlan } from '@draughtbook/shared-calc'
import { writePlanWorkbook, writeSummaryWorkbook } from '@draughtbook/shared-calc/workbook'
import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { inventedRecord } from '../archive/invented-record.js'
import { violations } from './support/axe.js'
import { shoot } from './support/pictures.js'
import { LOG_INPUT, outcome } from './support/steps.js'
import { World } from './support/world.js'

const sample = (name: string): string => fileURLToPath(new URL(`../log/samples/${name}`, import.meta.url))

const XLSX = 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet'

const demoPlan = async (): Promise<Uint8Array> =>
  writePlanWorkbook(parsePlan(JSON.parse(await readFile('test/demo/demo-plan.json', 'utf8'))))

let world: World
beforeAll(async () => {
  world = await World.start()
})
afterAll(() => world?.stop())

/** Opens a log and counts every click from there on. */
async function openCounting(page: Page, name: string): Promise<() => Promise<number>> {
  await page.evaluate(() => {
    const counted = window as unknown as { clicks: number }
    // Opening a file is a click too.
    counted.clicks = 1
    window.addEventListener(
      'pointerdown',
      ({ isTrusted }) => {
        if (isTrusted) counted.clicks += 1
      },
      true,
    )
  })
  await page.setInputFiles(LOG_INPUT, sample(name))
  return () => page.evaluate(() => (window as unknown as { clicks: number }).clicks)
}

/** n50 of each as its inventor wrote it down (`test/log/samples/expected.json`). */
describe('an unseen log on the page, from open to result', () => {
  it.each([
    ['01-vertical-two-blocks.xlsx', '0.806'],
    ['07b-us-pa-cfm.xlsx', '1.0'],
  ])('%s is shown as understood and accepted with one click', async (name, n50) => {
    const { page, complaints } = await world.open()
    const clicks = await openCounting(page, name)
    await page.locator('.role-tag').first().waitFor()
    expect(await page.locator('.role-tag').count()).toBeGreaterThan(5)
    await page.getByRole('button', { name: 'Accept and calculate' }).click()
    await outcome(page).waitFor()
    expect(await clicks()).toBeLessThanOrEqual(6)
    expect(await outcome(page).textContent()).toContain(`n50 ${n50}`)
    expect(await page.locator('.role-tag').count()).toBe(0)
    expect(complaints).toEqual([])
  })

  it('lists several tests to choose from, and reads the one chosen', async () => {
    const { page } = await world.open()
    const clicks = await openCounting(page, '16b-two-houses-one-sheet.xlsx')
    await page.getByText('This log holds 2 tests. Which one?').waitFor()
    expect(await page.getByRole('button', { name: 'Accept and calculate' }).count()).toBe(0)
    await page.locator('.tests button').nth(1).click()
    await page.getByRole('button', { name: 'Accept and calculate' }).click()
    await outcome(page).waitFor()
    expect(await clicks()).toBeLessThanOrEqual(6)
  })

  it.each([350, 1280])('asks what a log leaves open, in plain words, at %i px', async (width) => {
    const { page } = await world.open('', { viewport: { width, height: 1100 } })
    const clicks = await openCounting(page, '20-raw-series.csv')
    await page.locator('[data-question]').first().waitFor()
    expect(await page.getByRole('button', { name: 'Accept and calculate' }).count()).toBe(0)
    expect(await violations(page)).toEqual([])
    const wide = await page.locator('.pane').evaluate((pane) => pane.scrollWidth - pane.clientWidth)
    expect(wide).toBeLessThanOrEqual(0)
    await shoot(page, `pane/proposal-${width}`)
    await page.locator('[data-question="conditions.indoorTemperature_C"]').getByRole('textbox').click()
    // Enter goes on to the next question, and after the last to the button that accepts the log.
    for (const [path, text] of [
      ['conditions.indoorTemperature_C', '20'],
      ['conditions.outdoorTemperature_C', '9'],
      ['building.volume_m3', '340'],
    ] as const) {
      const question = page.locator(`[data-question="${path}"]`)
      await question.and(page.locator(':focus-within')).waitFor()
      await page.keyboard.type(`${text}\n`)
      await question.waitFor({ state: 'detached' })
    }
    await page.getByRole('button', { name: 'Accept and calculate' }).and(page.locator(':focus')).waitFor()
    await page.keyboard.press('Enter')
    await outcome(page).waitFor()
    // Opening the file, and the first question.
    expect(await clicks()).toBe(2)
    await shoot(page, `pane/accepted-${width}`)
  })
})

describe('a file that is no log', () => {
  it('a summary and a plan are named as what they are, with what to open instead', async () => {
    const { page } = await world.open()
    for (const [name, make, says] of [
      [
        'summary.xlsx',
        () => writeSummaryWorkbook(inventedRecord(1)),
        'this is a Draughtbook summary, not a test log: give the log it was made from',
      ],
      [
        'plan.xlsx',
        demoPlan,
        'this is a Draughtbook test plan, not a test: type its readings into a test log',
      ],
    ] as const) {
      await page.setInputFiles(LOG_INPUT, { name, mimeType: XLSX, buffer: Buffer.from(await make()) })
      await page.getByRole('alert').getByText(says).waitFor()
      expect(await page.getByText('Which one?').count()).toBe(0)
      await page.getByRole('button', { name: 'Pick the cells myself' }).waitFor()
    }
  })

  it('one that cannot be opened is named with its file', async () => {
    const { page } = await world.open()
    const buffer = Buffer.from('pressure;flow')
    await page.setInputFiles(LOG_INPUT, { name: 'plot 7.xlsx', mimeType: XLSX, buffer })
    const said = page.getByText('plot 7.xlsx: the file is named .xlsx but is text')
    await said.waitFor()
    expect(await said.count()).toBe(1)
  })
})
