import { writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { commandLine, folder } from '../service/support/command-line.js'
import { downloadOf, field, outcome, step } from './support/steps.js'
import { World } from './support/world.js'

const SOON = { timeout: 60_000 }

let world: World
let page: Page
beforeAll(async () => {
  world = await World.start()
  ;({ page } = await world.open('', { viewport: { width: 350, height: 740 }, hasTouch: true }))
})
afterAll(() => world?.stop())

const cell = (label: string) => page.getByLabel(label, { exact: true })

/** Puts text into the clipboard's event, as a spreadsheet copies cells: tabs between columns, line ends between rows. */
const paste = (label: string, text: string): Promise<void> =>
  cell(label).evaluate((input, copied) => {
    const clipboardData = new DataTransfer()
    clipboardData.setData('text/plain', copied)
    input.dispatchEvent(new ClipboardEvent('paste', { clipboardData, bubbles: true, cancelable: true }))
  }, text)

async function newTest(method: string): Promise<void> {
  // A page on which nothing was entered is a new test.
  const create = page.getByRole('button', { name: 'New test' })
  if (await create.isVisible()) await create.click()
  await expect.poll(() => field(page, 'Building *').inputValue(), SOON).toBe('')
  await field(page, 'Building *').fill('Barn (invented)')
  await field(page, 'Internal volume').fill('400')
  await field(page, 'Test date').fill('2026-10-14')
  await field(page, 'Test method').focus()
  await field(page, 'Test method').selectOption(method)
  await field(page, 'Target').first().focus()
  await field(page, 'Target').first().selectOption({ label: 'Germany, without ventilation system: n50 ≤ 3' })
  await step(page, 'On site')
  for (const label of ['Indoor temperature', 'Outdoor temperature']) await field(page, label).fill('20')
  await field(page, 'Barometric pressure').fill('101325')
}

describe('readings typed on a phone', () => {
  it.each([
    // 620 m³/h of reference air at 50 Pa, in 400 m³, are 1.55 an hour, whatever the exponent.
    ['ASTM E1827, one pressure', 'astm-e1827-22-one-point', 5, /n50 1\.55 1\/h/],
    // Its one-point test is reported 1.1 times as measured (value from memory).
    ['ANSI/RESNET/ICC 380, one pressure', 'ansi-resnet-icc-380', 1, /n50 1\.7[01] 1\/h/],
  ])(
    '%s: from the first field to the verdict and the workbook, which re-runs as issued',
    async (_, method, count, value) => {
      await newTest(method)
      for (const direction of ['Depressurisation', 'Pressurisation']) {
        await page.getByRole('button', { name: new RegExp(`^${direction}`) }).click()
        for (const when of ['before', 'after'])
          await cell(`Zero-flow pressure ${when}, fan covered, value 1`).fill('0')
        for (let reading = 1; reading <= count; reading++) {
          await cell(`Pressure, reading ${reading}`).fill('50')
          await cell(`Air flow, reading ${reading}`).fill('620')
        }
      }
      await field(page, 'The device shows flows of').selectOption('reference air')
      await expect.poll(() => outcome(page).textContent(), SOON).toMatch(/Meets the target/)
      expect(await outcome(page).textContent()).toMatch(value)
      expect(await page.locator('.section-readings > summary').textContent()).toContain(
        `${2 * count} readings`,
      )
      await step(page, 'Result')
      // One pressure has no scatter to make an interval of.
      await page.locator('.figures').waitFor()
      expect(await page.getByText('95 % intervals').count()).toBe(0)
      const { bytes } = await downloadOf(page, () =>
        page.getByRole('button', { name: 'Download the summary workbook' }).click(),
      )
      const file = join(await folder(), `${method}.xlsx`)
      await writeFile(file, bytes)
      const { code, out } = await commandLine('rerun', file)
      expect([code, out]).toEqual([0, expect.stringContaining('exactly as issued')])
    },
  )

  it('cells copied in a spreadsheet are pasted from the cursor on, with decimal commas; a wider block is refused', async () => {
    await newTest('iso-9972:2015')
    await paste('Pressure, reading 1', '-60,5\t412,25\r\n-50\t365\r\n-40\t316\r\n')
    await expect.poll(() => cell('Air flow, reading 3').inputValue(), SOON).toBe('316')
    expect(await cell('Pressure, reading 1').inputValue()).toBe('-60,5')
    await paste('Air flow, reading 4', '263\r\n208')
    expect(await cell('Air flow, reading 5').inputValue()).toBe('208')
    await page.getByRole('button', { name: 'Undo' }).click()
    await expect.poll(() => page.locator('.reading-table tbody tr').count(), SOON).toBe(4)
    await paste('Pressure, reading 1', 'a\tb\tc')
    await page.getByText('the clipboard holds 3 columns, and from here on the table has 2').waitFor()
    await paste('Pressure, reading 1', '1\t2\n'.repeat(5000))
    await page.getByText('the clipboard holds 5000 rows').waitFor()
    expect(await cell('Pressure, reading 1').inputValue()).toBe('-60,5')
    await paste('Zero-flow pressure before, fan covered, value 1', '-1,2\t-0,8\t-1')
    await expect
      .poll(() => cell('Zero-flow pressure before, fan covered, value 3').inputValue(), SOON)
      .toBe('-1')
  })

  it('a zero-flow pressure that is unusual can be kept as it is', async () => {
    await newTest('iso-9972:2015')
    await cell('Zero-flow pressure before, fan covered, value 1').fill('35')
    const asked = page.locator('.value-list .fault', { hasText: '35 Pa is unusually high' })
    await asked.waitFor()
    await asked.getByRole('button', { name: 'Keep 35' }).click()
    await asked.waitFor({ state: 'detached' })
  })
})
