import {
  evaluate,
  measureTakeOff,
  RECORD_FORMAT_2,
  reportLeaks,
  type TakeOff,
} from '@draughtbook/shared-calc'
import { readSummaryWorkbook } from '@draughtbook/shared-calc/workbook'
import ExcelJS from 'exceljs'
import type { Locator, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { violations } from '../pane/support/axe.js'
import { shoot } from '../pane/support/pictures.js'
import { downloadOf, finding, openDemo, openLog, outcome, pick, select, step } from '../pane/support/steps.js'
import { World } from '../pane/support/world.js'
import { compareCached } from '../support/formula-cells.js'

const SOON = { timeout: 60_000 }

let world: World
beforeAll(async () => {
  world = await World.start()
})
afterAll(() => world?.stop())

/** An invented log: pressures, then flows before and after repairs, of both directions. */
const pressures = [65, 56, 47, 39, 30, 21, 12]
const flow = (coefficient: number, dp: number, i: number) =>
  (coefficient * dp ** 0.66 * (1 + (i % 3 === 0 ? 0.002 : -0.001))).toFixed(1)
const log = [
  'Pa,m3/h,m3/h,Pa,m3/h,m3/h,Pa,Pa',
  ...pressures.map((dp, i) =>
    [
      -dp - 1.1,
      flow(17, dp, i),
      flow(12, dp, i),
      dp - 1.1,
      flow(18, dp, i),
      flow(12.6, dp, i),
      i % 2 === 0 ? -1 : -1.2,
      i % 2 === 0 ? -1.2 : -1,
    ].join(','),
  ),
].join('\n')

/** Puts the step on show in which something can be seen. A log opened a moment ago may put its own step on show meanwhile. */
const reveal = async (page: Page, what: Locator): Promise<Locator> => {
  const isShown = (): Promise<boolean> => what.first().isVisible()
  for (let round = 0; round < 10; round += 1)
    for (const name of ['Before', 'On site', 'Result'] as const) {
      if (await isShown()) return what
      await step(page, name)
    }
  expect(await isShown(), `${what} can be seen in a step`).toBe(true)
  return what
}

/** A field by its whole label. */
const field = (page: Page, label: string): Promise<Locator> =>
  reveal(
    page,
    page
      .locator('input, select, textarea')
      .and(page.getByLabel(label, { exact: true }))
      .first(),
  )

const open = async (page: Page, title: string): Promise<Locator> => {
  const found = page.locator('details.section').filter({ has: page.locator('h2', { hasText: title }) })
  // A log that was opened a moment ago may still put its own step on show.
  let section = await reveal(page, found)
  const isOpen = () => section.evaluate((element) => (element as HTMLDetailsElement).open)
  if (!(await isOpen())) {
    const unfold = (timeout: number) => section.locator('summary').first().click({ timeout })
    try {
      await unfold(3000)
    } catch {
      section = await reveal(page, found)
      await unfold(30_000)
    }
  }
  // What was folded away is drawn when it is unfolded.
  await section.locator(':scope > :not(summary)').first().waitFor()
  return section
}
const row = (section: Locator, list: string, index: number) =>
  section.locator(`[data-list="${list}"] > fieldset`).nth(index)
const fill = async (within: Locator, values: Readonly<Record<string, string>>): Promise<void> => {
  for (const [label, value] of Object.entries(values)) {
    // A field with one unit only has it in its label.
    const whole = within.getByLabel(label, { exact: true })
    const entry = (await whole.count()) > 0 ? whole.first() : within.getByLabel(label).first()
    if ((await entry.evaluate((element) => element.tagName)) === 'SELECT') await entry.selectOption(value)
    else await entry.fill(value)
  }
}

/** What sticks out of the pane, for the message of a failure. */
const overflowing = (page: Page): Promise<string> =>
  page.locator('.pane').evaluate((pane) => {
    const edge = pane.getBoundingClientRect().left + pane.clientWidth
    return [...pane.querySelectorAll('*')]
      .filter((element) => element.getBoundingClientRect().right > edge + 0.5)
      .map((element) => element.outerHTML.slice(0, 90))
      .slice(0, 6)
      .join('\n')
  })

describe('a house on the page twin', () => {
  it('from its rooms to the plan, the readings, the verdict, the leaks and the retest', async () => {
    const { page, complaints } = await world.open()
    await openLog(page, { name: 'invented-readings.csv', buffer: Buffer.from(log) })

    // Rooms: the volume is worked out and taken over.
    const volume = await open(page, 'Volume and areas')
    const add = volume.getByRole('button', { name: 'Add a space' })
    await add.click()
    await fill(row(volume, 'takeOff.spaces', 0), {
      Space: 'ground floor',
      'Length m': '8,1',
      'Width m': '7.2',
      'Clear height m': '2.5',
    })
    await add.click()
    await fill(row(volume, 'takeOff.spaces', 1), { Space: 'upper floor', Shape: 'under slopes' })
    await fill(row(volume, 'takeOff.spaces', 1), {
      'Length m': '8.1',
      'Width m': '720 cm',
      'Knee wall m': '1.2',
      'Ridge or flat part m': '2.6',
      'Width of flat part m': '3',
    })
    await add.click()
    await fill(row(volume, 'takeOff.spaces', 2), {
      Space: 'floor between',
      'Length m': '8.1',
      'Width m': '7.2',
      'Clear height m': '0.3',
      Volume: 'overall internal',
      'Floor area counts': 'no',
    })
    await volume.getByLabel('Uncertainty of a length m', { exact: true }).fill('0.01')
    const expected = 8.1 * 7.2 * 2.5 + 8.1 * (7.2 * 1.2 + ((7.2 + 3) / 2) * 1.4)
    await expect.poll(() => volume.locator('.totals').textContent(), SOON).toContain(expected.toFixed(2))
    expect(await volume.locator('.totals').textContent()).toContain(
      `overall internal volume is ${(8.1 * 7.2 * 0.3).toFixed(1)} m³ larger`,
    )
    await volume.getByRole('button', { name: 'Use the net volume' }).click()
    expect(await (await field(page, 'Internal volume *')).inputValue()).toBe(expected.toFixed(2))

    // Plan.
    await (await field(page, 'Building *')).fill('Invented house')
    await (await field(page, 'Building height')).fill('5.4')
    await (await field(page, 'Altitude')).fill('120')
    await (await field(page, 'Test date *')).fill('2026-11-30')
    await (await field(page, 'Tester')).fill('A. Tester (invented)')
    await (await field(page, 'Preparation')).selectOption('method 1')
    await (await field(page, 'Target')).focus()
    await expect
      .poll(async () => (await field(page, 'Target')).locator('option').count(), SOON)
      .toBeGreaterThan(5)
    await (await field(page, 'Target')).selectOption('passive-house-new')
    const plan = await open(page, 'Plan')
    await fill(plan, {
      'Zero-flow pressure': '-1.1',
      'Indoors, expected': '20',
      'Outdoors, forecast': '4',
      'Wind, forecast': '2',
    })
    await plan.getByRole('button', { name: 'Add a device' }).click()
    await fill(row(plan, 'plan.devices', 0), {
      'Flow device': 'small fan',
      'Calibration due': '2026-11-01',
      'Name of range 1': 'middle',
      'Lowest flow, range 1 m³/h': '40',
      'Highest flow, range 1 m³/h': '400',
    })
    const allowed = (0.6 * Number(expected.toFixed(2))).toFixed(0)
    await expect
      .poll(() => plan.locator('.plan-result').textContent(), SOON)
      .toContain(`${allowed} m³/h at 50 Pa`)
    expect(await plan.locator('.plan-result').textContent()).toContain('small fan (chosen)')
    expect(await plan.locator('[data-plan-rule="calibration-lapses"]').textContent()).toContain(
      '1 November 2026',
    )
    const sheet = await downloadOf(page, () =>
      plan.getByRole('button', { name: 'Download the plan for the site' }).click(),
    )
    const workbook = new ExcelJS.Workbook()
    await workbook.xlsx.load(new Uint8Array(sheet.bytes).buffer)
    expect(workbook.worksheets[0]?.name).toBe('Plan')

    // Preparation and cautions.
    const preparation = await open(page, 'Openings')
    for (const select_ of await preparation.locator('.checklist select').all())
      await select_.selectOption('not present')
    await preparation.getByLabel('State of natural ventilation openings').selectOption('sealed')
    await expect.poll(() => preparation.locator('.departs').count(), SOON).toBe(1)
    await preparation.getByLabel('State of natural ventilation openings').selectOption('closed')
    const cautions = await open(page, 'Before the fan is switched on')
    for (const answer of await cautions.getByRole('button', { name: 'taken care of' }).all())
      await answer.click()

    // Readings: two first, then all.
    await (await field(page, 'Indoor temperature *')).fill('20')
    await (await field(page, 'Outdoor temperature *')).fill('4')
    await step(page, 'On site')
    const take = async (
      direction: 'depressurisation' | 'pressurisation',
      picks: readonly (readonly [string, string])[],
    ) => {
      for (const [role, address] of picks) {
        await select(page, address)
        await pick(page, role, direction)
      }
    }
    await take('depressurisation', [
      ['Pressures', 'A2:A3'],
      ['Air flows', 'B2:B3'],
    ])
    const soFar = page.locator('.so-far[data-direction="depressurisation"]')
    await expect.poll(() => soFar.textContent(), SOON).toContain('2 readings')
    expect(await soFar.textContent()).toContain('exponent 0.65 assumed')
    await take('depressurisation', [
      ['Pressures', 'A2:A8'],
      ['Air flows', 'B2:B8'],
      ['Zero-flow before', 'G2:G8'],
      ['Zero-flow after', 'H2:H8'],
    ])
    await expect.poll(() => soFar.getAttribute('data-enough'), SOON).toBe('true')
    await take('pressurisation', [
      ['Pressures', 'D2:D8'],
      ['Air flows', 'E2:E8'],
      ['Zero-flow before', 'G2:G8'],
      ['Zero-flow after', 'H2:H8'],
    ])

    // Verdict, and what is left to seal.
    await step(page, 'Result')
    await expect.poll(() => outcome(page).getAttribute('data-outcome'), SOON).toBe('misses')
    for (const rule of ['caution-unanswered', 'preparation-departs', 'preparation-blank', 'take-off-used'])
      await expect
        .poll(() => finding(page, rule).and(page.locator(':visible')).count(), { ...SOON, message: rule })
        .toBe(0)
    const leaks = await open(page, 'Leaks')
    await expect.poll(() => leaks.locator('.to-seal tbody tr').count(), SOON).toBe(4)
    await leaks.getByRole('button', { name: 'Add a leak' }).click()
    await fill(row(leaks, 'leaks.list', 0), {
      Place: 'cable entry',
      Kind: 'service penetration',
      'Seen under': 'both',
      'Size in words': 'finger',
      'How many': '3',
    })
    await expect
      .poll(() => row(leaks, 'leaks.list', 0).locator('legend').textContent(), SOON)
      .toContain('9.4 cm²')

    // Repairs and retest.
    await leaks.getByRole('button', { name: 'Keep this result as the test before repairs' }).click()
    await fill(row(leaks, 'leaks.list', 0), { Fixed: 'yes' })
    await fill(row(leaks, 'leaks.list', 0), { 'In repair round': '1' })
    await (await field(page, 'Stage')).selectOption('retest')
    await step(page, 'On site')
    await take('depressurisation', [['Air flows', 'C2:C8']])
    await take('pressurisation', [['Air flows', 'F2:F8']])
    await step(page, 'Result')
    await expect.poll(() => outcome(page).getAttribute('data-outcome'), SOON).toBe('meets')
    await open(page, 'Leaks')
    await expect
      .poll(() => leaks.locator('[data-round="1"]').textContent(), SOON)
      .toMatch(/Round 1: \+\d+ m³\/h \(\+30 %\)/)

    // The workbook holds it all, and recalculates.
    const download = await reveal(page, page.getByRole('button', { name: 'Download the summary workbook' }))
    const { bytes } = await downloadOf(page, () => download.click())
    const { record } = await readSummaryWorkbook(bytes)
    expect(record.format).toBe(RECORD_FORMAT_2)
    expect(measureTakeOff(record.takeOff as TakeOff).netVolume?.value).toBeCloseTo(expected, 9)
    expect(reportLeaks(record).rounds[0]?.gainShare).toBeCloseTo(0.3, 2)
    expect(evaluate(record).verdict.outcome).toBe('meets')
    expect(await compareCached(bytes, { relative: 1e-9, absolute: 1e-12 })).toEqual([])
    for (const title of ['While reading', 'Volume and areas', 'Plan', 'Openings', 'Leaks'])
      await shoot(await open(page, title), `house-page/${title}`)
    expect(complaints).toEqual([])
  })

  it('an unfinished room is left out and named, and the rest goes on', async () => {
    const { page, complaints } = await world.open()
    const volume = await open(page, 'Volume and areas')
    await volume.getByRole('button', { name: 'Add a space' }).click()
    await fill(row(volume, 'takeOff.spaces', 0), { Space: 'hall', 'Length m': '3' })
    await reveal(page, finding(page, 'log-part-unfinished'))
    await finding(page, 'log-part-unfinished').waitFor()
    expect(await finding(page, 'log-part-unfinished').textContent()).toContain(
      'The take-off is not complete, so it is not used',
    )
    await open(page, 'Volume and areas')
    await fill(row(volume, 'takeOff.spaces', 0), { 'Width m': '2', 'Clear height m': '2.5' })
    await finding(page, 'log-part-unfinished').waitFor({ state: 'detached' })
    await expect.poll(() => volume.locator('.totals').textContent(), SOON).toContain('15.00')
    expect(complaints).toEqual([])
  })

  it('every section with a row of each list fits 320 and 800 px and breaks no rule of axe-core', async () => {
    const { page } = await world.open('', { viewport: { width: 800, height: 1200 } })
    await openDemo(page)
    for (const [title, ...adds] of [
      ['Volume and areas', 'Add a space', 'Add an element'],
      ['Plan', 'Add a device', 'Add a gauge'],
      ['Openings'],
      ['Before the fan is switched on'],
      ['Leaks', 'Add a leak', 'Add an earlier test'],
    ] as const) {
      const section = await open(page, title)
      for (const name of adds) await section.getByRole('button', { name, exact: true }).click()
    }
    await reveal(page, page.locator('.plan-result'))
    await page.locator('.plan-result').waitFor()
    for (const width of [320, 800]) {
      await page.setViewportSize({ width, height: 1200 })
      const pane = await page
        .locator('.pane')
        .evaluate((element) => element.scrollWidth - element.clientWidth)
      expect(pane, await overflowing(page)).toBeLessThanOrEqual(0)
      expect(await violations(page), `${width} px`).toEqual([])
      await shoot(page, `house-page/all-${width}`)
    }
  })
})
