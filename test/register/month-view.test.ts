import { copyFile, mkdtemp, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { evaluate } from '@draughtbook/shared-calc'
import { writeSummaryWorkbook } from '@draughtbook/shared-calc/workbook'
import ExcelJS from 'exceljs'
import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { makeArchive } from '../archive/make-archive'
import { Tamperer, withNumber } from '../archive/tamper'
import { violations } from '../pane/support/axe.js'
import { downloadOf } from '../pane/support/steps.js'
import { World } from '../pane/support/world.js'

/** What never comes ends the wait; a busy machine does not. */
const SOON = { timeout: 110_000 }
const COUNT = 12
/** Of these, re-run: each is made again, which takes far longer than reading it. */
const FEW = 4
let world: World
let folder: string
let made: Awaited<ReturnType<typeof makeArchive>>

beforeAll(async () => {
  world = await World.start()
  folder = await mkdtemp(join(tmpdir(), 'draughtbook-month-'))
  made = await makeArchive(folder, COUNT)
  await writeFile(
    join(folder, 'cut.xlsx'),
    (await writeSummaryWorkbook(made[0]?.record ?? never())).slice(0, 8000),
  )
  await writeFile(join(folder, 'photo.jpg'), 'no picture')
})
afterAll(async () => {
  await world?.stop()
  await rm(folder, { recursive: true, force: true })
})

const never = (): never => {
  throw new Error('nothing was made')
}

async function view(name: 'Month' | 'Re-run') {
  const watched = await world.open('', { viewport: { width: 1200, height: 900 } })
  await watched.page.getByRole('button', { name, exact: true }).click()
  await watched.page.locator('.archive').waitFor()
  return watched
}

const chooseFolder = (page: Page, path = folder) => page.getByLabel('Folder').setInputFiles(path)
const bodyRows = (page: Page) => page.locator('.sortable tbody tr')

/** Where the column with a heading stands. */
const headed = async (page: Page, heading: RegExp): Promise<number> =>
  (await page.locator('.sortable thead th').allTextContents()).findIndex((text) => heading.test(text.trim()))

async function load(bytes: Uint8Array): Promise<ExcelJS.Workbook> {
  const workbook = new ExcelJS.Workbook()
  await workbook.xlsx.load(bytes.slice().buffer)
  return workbook
}

describe('the Month view', () => {
  it('reads a folder on this machine, shows every test and every file left out, and hands out the register', async () => {
    const { page, complaints, asked } = await view('Month')
    const before = asked.length
    await chooseFolder(page)
    await expect.poll(() => bodyRows(page).count(), SOON).toBe(COUNT)
    expect(await page.locator('.totals').textContent()).toMatch(
      new RegExp(`^${COUNT} rows, \\d+ tests included in totals: \\d+ met the target`),
    )
    expect(await page.locator('.left-out').textContent()).toMatch(
      /cut\.xlsx: the file is incomplete or damaged/,
    )
    expect(await page.locator('.left-out').textContent()).toMatch(/photo\.jpg: not a workbook/)
    const cells = await bodyRows(page).first().locator('td').allTextContents()
    const first = made.find(({ path }) => path.endsWith(cells.at(-1)?.split('/').at(-1) ?? 'none'))
    expect(cells[await headed(page, /^n50/)]).toBe(
      evaluate(first?.record ?? never()).results.n50?.value.toFixed(2),
    )

    const { name, bytes } = await downloadOf(page, () =>
      page.getByRole('button', { name: 'Download the register' }).click(),
    )
    expect(name).toBe('register.xlsx')
    const sheet = (await load(bytes)).getWorksheet('Register')
    expect(sheet?.getCell('A18').value).toBe(COUNT)
    // Nothing but the pane's own parts was asked for, and nothing was sent.
    expect(asked.slice(before).filter((url) => url.includes('/v1/'))).toEqual([])
    expect(complaints).toEqual([])
  })

  it('sorts and filters by keyboard, and meets WCAG 2.2 AA as axe checks it', async () => {
    const { page } = await view('Month')
    await chooseFolder(page)
    await expect.poll(() => bodyRows(page).count(), SOON).toBe(COUNT)
    const column = async (i: number) =>
      (
        await bodyRows(page).evaluateAll(
          (rows, index) => rows.map((row) => row.children[index]?.textContent ?? ''),
          i,
        )
      ).map(Number)
    await page.getByRole('button', { name: /^n50/ }).press('Enter')
    const at = await headed(page, /^n50/)
    const up = await column(at)
    expect(up).toEqual([...up].sort((a, b) => a - b))
    await page.getByRole('button', { name: /^n50/ }).press('Enter')
    expect(await column(at)).toEqual([...up].reverse())
    expect(await page.locator('th[aria-sort=descending]').count()).toBe(1)
    await page.getByLabel('Verdict').selectOption('fails')
    const misses = made.filter(({ record }) => evaluate(record).verdict.outcome === 'misses').length
    expect(await bodyRows(page).count()).toBe(misses)
    await page.getByLabel('Filter').fill('no such plot')
    expect(await bodyRows(page).count()).toBe(0)
    expect(await violations(page)).toEqual([])
  })

  it('keeps its result while another view is open, stops when asked, and fits 320 px', async () => {
    const { page } = await view('Month')
    await chooseFolder(page)
    await page.getByRole('button', { name: 'Stop' }).click()
    await expect.poll(() => page.getByRole('button', { name: 'Stop' }).count(), SOON).toBe(0)
    expect(await page.locator('.totals').count()).toBe(0)
    await chooseFolder(page)
    await expect.poll(() => bodyRows(page).count(), SOON).toBe(COUNT)
    await page.getByRole('button', { name: 'Test', exact: true }).click()
    await page.getByRole('button', { name: 'Month', exact: true }).click()
    expect(await bodyRows(page).count()).toBe(COUNT)
    await page.setViewportSize({ width: 320, height: 700 })
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(320)
  })
})

describe('the Re-run view', () => {
  it('tells untouched workbooks from one with a changed reading, and hands out the workbook to sign', async () => {
    const few = await mkdtemp(join(folder, 'few-'))
    for (const [i, { path }] of made.slice(0, FEW).entries()) await copyFile(path, join(few, `${i}.xlsx`))
    await copyFile(join(folder, 'cut.xlsx'), join(few, 'cut.xlsx'))
    const book = new Tamperer(await writeSummaryWorkbook(made[3]?.record ?? never()))
    const cell = book.cells().find(({ sheet, xml }) => sheet === 'Readings' && /<v>-?6\d\.\d<\/v>/.test(xml))
    await writeFile(join(few, 'changed.xlsx'), book.with(cell ?? never(), withNumber(cell ?? never(), 61.7)))
    const { page, complaints } = await view('Re-run')
    await chooseFolder(page, few)
    const tested = page.getByRole('table', { name: 'Tests re-run' }).locator('tbody tr')
    await expect.poll(() => tested.count(), SOON).toBe(FEW + 2)
    expect(await page.locator('.headline').textContent()).toBe(`2 of ${FEW + 2} to check`)
    // Issued, now in the file, recalculated: the first is the reading, the figures that follow stand under it.
    const [reading] = await page
      .getByRole('table', { name: 'Differences' })
      .locator('tbody tr')
      .evaluateAll((rows) => rows.map((row) => [...row.children].map(({ textContent }) => textContent)))
    expect(reading?.[0]).toBe('changed.xlsx')
    expect(reading?.[4]).toBe('61.7')
    const outcomes = await tested.evaluateAll((rows) => rows.map((row) => row.children[0]?.textContent))
    expect(outcomes.slice(0, 2)).toEqual(['cannot be read', 'inputs changed after issue'])
    // The browser's mathematics may differ from Node's in the last digit.
    const good = outcomes.slice(2)
    expect(good).toHaveLength(FEW)
    expect(good.filter((one) => one !== 'exactly as issued' && one !== 'agrees')).toEqual([])
    const { bytes } = await downloadOf(page, () =>
      page.getByRole('button', { name: 'Download the re-run' }).click(),
    )
    const differences = (await load(bytes)).getWorksheet('Differences')
    expect(differences?.getCell('C5').value).toBe('input')
    expect(differences?.getCell('G5').value).toBe(61.7)
    expect(await violations(page)).toEqual([])
    expect(complaints).toEqual([])
    await rm(few, { recursive: true })
  })
})
