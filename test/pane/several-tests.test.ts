import { evaluate, type TestRecord } from '@draughtbook/shared-calc'
import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { compareCached } from '../support/formula-cells.js'
import { type Chosen, home, json, LIMIT, workbook } from './support/invented-homes.js'
import { downloadOf } from './support/steps.js'
import { World } from './support/world.js'

const SOON = { timeout: 60_000 }

let world: World
beforeAll(async () => {
  world = await World.start()
})
afterAll(() => world?.stop())

async function view(name: 'Building' | 'Stages') {
  const watched = await world.open('', { viewport: { width: 1200, height: 900 } })
  await watched.page.getByRole('button', { name, exact: true }).click()
  return watched
}

const choose = (page: Page, files: Chosen[]) => page.getByLabel('Workbooks').setInputFiles(files)
/** Texts of the cells of a table, row by row. */
const rowsOf = (page: Page, name: string) =>
  page
    .getByRole('table', { name, exact: true })
    .locator('tbody tr')
    .evaluateAll((rows) => rows.map((row) => [...row.children].map(({ textContent }) => textContent ?? '')))

describe('the Building view', () => {
  const records = [home(1, 0.42), home(2, 0.75), home(3, 0.3)]

  it('puts homes together without a network, follows the rule chosen, and hands out the workbook', async () => {
    const { page, complaints, asked } = await view('Building')
    const before = asked.length
    await choose(page, [
      await workbook('flat-1.xlsx', records[0] as TestRecord),
      await workbook('flat-2.xlsx', records[1] as TestRecord),
      json('flat-3.json', records[2] as TestRecord),
    ])
    // This target has no rule for several homes: each must meet it.
    await expect.poll(() => page.locator('.headline').textContent(), SOON).toBe('Invented Court: fails')
    await page.getByText('3 files chosen: flat-1.xlsx, flat-2.xlsx, flat-3.json').waitFor()
    expect((await rowsOf(page, 'Homes')).map(([name, , verdict]) => `${name} ${verdict}`)).toEqual([
      'Flat 1 meets',
      'Flat 2 fails',
      'Flat 3 meets',
    ])
    await page.getByText('How the homes are judged').click()
    await page.getByLabel('Rule').selectOption('summed')
    await expect.poll(() => page.locator('.headline').textContent(), SOON).toBe('Invented Court: meets')
    // Conservation of mass: what all homes leak, by what all homes hold.
    const sum = (of: (record: TestRecord) => number) => records.reduce((all, record) => all + of(record), 0)
    const together =
      sum((record) => evaluate(record).results.q50.value) / sum(({ building }) => building.volume_m3 ?? 0)
    const summed = (await rowsOf(page, 'The homes together')).find(([way]) =>
      way?.endsWith('(used for the verdict)'),
    )
    expect(Math.abs(Number(summed?.[3]) - together)).toBeLessThanOrEqual(0.005)

    // Five homes, three tested: more are asked for.
    await page.getByLabel('Homes in the building').fill('5')
    await page.getByLabel('Homes to be tested').fill('4')
    await page.getByText('3 tested of 4 required: 1 still to test').waitFor()
    await page.getByLabel('Homes to be tested').fill('half')
    await page.getByText('a whole number', { exact: true }).waitFor()
    await page.getByText('3 tested of 4 required').waitFor()
    await page.getByLabel('Homes in the building').fill('')
    await page.getByLabel('Homes to be tested').fill('')
    await page.getByText('still to test').waitFor({ state: 'detached' })
    const { name, bytes } = await downloadOf(page, () =>
      page.getByRole('button', { name: 'Download the building' }).click(),
    )
    expect(name).toBe('Invented-Court.xlsx')
    expect(await compareCached(bytes, { relative: 1e-9, absolute: 1e-9 })).toEqual([])
    expect(asked.slice(before).filter((url) => url.includes('/v1/'))).toEqual([])
    expect(complaints).toEqual([])
  })

  it('names a file that cannot be read, and makes no building without it', async () => {
    const { page } = await view('Building')
    const whole = await workbook('flat-1.xlsx', records[0] as TestRecord)
    await choose(page, [whole, { ...whole, name: 'flat-2.xlsx', buffer: whole.buffer.subarray(0, 9000) }])
    await page
      .getByText(/The building could not be made: 1 file cannot be used\.\s+flat-2\.xlsx: /)
      .waitFor(SOON)
    expect(await page.locator('.headline').count()).toBe(0)
  })
})

describe('the Stages view', () => {
  it('says of each plot whether the next trade may start, and follows the shares', async () => {
    const { page, complaints } = await view('Stages')
    await choose(page, [
      await workbook('1-fabric.xlsx', home(1, 0.3, 'fabric')),
      await workbook('1-services.xlsx', home(1, 0.34, 'after services')),
      json('2-fabric.json', home(2, 0.55, 'fabric')),
      json('3-nothing.json', home(3, 0.3)),
    ])
    await expect.poll(() => page.locator('.headline').textContent(), SOON).toBe('1 of 2 plots held up')
    const site = await rowsOf(page, 'Plots and stages')
    expect(site.map(([plot, now, , , acceptance]) => [plot, acceptance, now])).toEqual([
      ['Invented Court, Flat 1', 'not tested', 'go'],
      ['Invented Court, Flat 2', 'not tested', 'stop'],
    ])
    // By definition: the share is the measured value by the limit.
    const share = (record: TestRecord) =>
      Math.round((100 * (evaluate(record).results.n50?.value ?? 0)) / LIMIT)
    expect(site[0]?.[2]).toContain(`${share(home(1, 0.3))} % used of 70 %`)
    expect(site[1]?.[2]).toContain(`${share(home(2, 0.55))} % used of 70 %`)
    await page.getByText('3-nothing.json').first().waitFor()
    await page.getByText('Left out: 1').waitFor()
    await page.getByText('What each stage may use').click()
    await page.getByLabel('Fabric may use, %').fill('99')
    // More than the stage after it may use: that is said until that stage may use more, and what is being set stays in view.
    const fault = page.getByText(/could not be made: .*must not decrease from stage to stage/)
    await fault.waitFor()
    await page.getByLabel('After services may use, %').fill('100')
    await fault.waitFor({ state: 'detached' })
    await page.getByLabel('Probability needed for go, %').fill('50')
    await expect.poll(() => page.locator('.headline').textContent(), SOON).toBe('2 plots: no plot is held up')
    const { bytes } = await downloadOf(page, () =>
      page.getByRole('button', { name: 'Download the stages' }).click(),
    )
    expect(await compareCached(bytes, { relative: 1e-9, absolute: 1e-9 })).toEqual([])
    expect(complaints).toEqual([])
  })
})
