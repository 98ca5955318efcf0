import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { Tamperer, withNumber } from '../archive/tamper.js'
import { violations } from './support/axe.js'
import { newPaleTexts, OF_COLOUR } from './support/colour-pairs.js'
import { type Chosen, home, workbook } from './support/invented-homes.js'
import { shoot } from './support/pictures.js'
import { downloadOf, field, openDemo, openLog, outcome, step, toView, type } from './support/steps.js'
import { World } from './support/world.js'

let world: World
beforeAll(async () => {
  world = await World.start()
})
afterAll(() => world?.stop())

/**
 * All that axe-core sees of a page besides colours: its elements and which of them are shown; and which can be scrolled, for the one
 * rule that asks for it. The rules that measure places and sizes are off, so those of a drawing do not count; nor does how many
 * cells of a kind a sheet has room for.
 */
const seen = (page: Page): Promise<{ elements: string; scrolling: string }> =>
  page.evaluate(() => {
    const isShown = (one: Element): boolean =>
      one.checkVisibility({ visibilityProperty: true, opacityProperty: true })
    const all = [...document.querySelectorAll('*')]
    const inSheets = all.filter((one) => one.parentElement?.closest('[role=grid]'))
    const others = all.filter((one) => !one.parentElement?.closest('[role=grid]'))
    const kinds = inSheets.map((one) => {
      const [role, kind] = ['role', 'class'].map((name) => one.getAttribute(name))
      return `${one.tagName} ${one.getAttributeNames().sort()} ${role} ${kind} ${isShown(one)}`
    })
    const scrolling = others.map(
      (one) => `${one.scrollWidth > one.clientWidth}${one.scrollHeight > one.clientHeight}`,
    )
    const copy = document.documentElement.cloneNode(true) as HTMLElement
    for (const sheet of copy.querySelectorAll('[role=grid]')) sheet.replaceChildren()
    const PLACES = / (?:d|[xy]|[xy][12]|c[xy]|width|height|viewBox|transform|points)="[^"]*"/g
    const elements = [copy.outerHTML.replace(PLACES, ''), others.map(isShown), [...new Set(kinds)].sort()]
    return { elements: elements.join('\n'), scrolling: scrolling.join() }
  })

/** Whatever follows the size of the window has followed it. */
const drawn = (page: Page): Promise<unknown> =>
  page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))))

const WIDTHS = [320, 350, 800, 1280]
/** Colours do not follow the width: they are looked at where the page is narrowest and widest. */
const COLOURED = [320, 1280]
const LIGHT = { colorScheme: 'light', forcedColors: 'none' } as const
/**
 * Looks that differ from the light one in colours alone. What covers what is seen in the light one, so here each kind of text on its
 * ground is looked at once, of all the states of the page.
 */
const OTHER_LOOKS = [
  ['dark', { colorScheme: 'dark', forcedColors: 'none' }, new Set<string>()],
  ['forced-colours', { colorScheme: 'light', forcedColors: 'active' }, new Set<string>()],
] as const

/** The page as it stands, at every width and in every look: no violation, nothing wider than the window. */
async function examine(page: Page, name: string, height: number, widths = WIDTHS): Promise<void> {
  const found: Record<string, unknown> = {}
  const before = new Set<string>()
  for (const width of widths) {
    await page.setViewportSize({ width, height })
    await drawn(page)
    const { elements, scrolling } = await seen(page)
    const coloured = COLOURED.includes(width)
    const [same, sameScrolling] = [before.has(elements), before.has(scrolling)]
    before.add(elements).add(scrolling)
    const wide = await page.evaluate(() => document.documentElement.scrollWidth)
    if (wide > width) found[`${name}, ${width} px`] = `${wide} px wide`
    if (same && !sameScrolling) {
      const faults = await violations(page, { only: ['scrollable-region-focusable'] })
      if (faults.length > 0) found[`${name}, ${width} px, scrolling`] = faults
    }
    // Where a width shows what another showed, only colours can differ.
    const rules = same ? { only: OF_COLOUR } : coloured ? {} : { without: OF_COLOUR }
    const faults = same && !coloured ? [] : await violations(page, rules)
    if (faults.length > 0) found[`${name}, ${width} px`] = faults
    await shoot(page, `pane/${width}-${name}-light`)
    for (const [look, media, known] of coloured ? OTHER_LOOKS : []) {
      await page.emulateMedia(media)
      const pale = await newPaleTexts(page, known)
      if (pale.length > 0) found[`${name}, ${width} px, ${look}`] = pale
      await shoot(page, `pane/${width}-${name}-${look}`)
    }
    if (coloured) await page.emulateMedia(LIGHT)
  }
  expect(found).toEqual({})
}

describe('at every width, in light, dark and forced colours', () => {
  it('a test looks right and is accessible in every step', async () => {
    // Where the browser cannot keep the page, that is said too.
    const { page } = await world.open('', { viewport: { width: 800, height: 1400 }, keepsPage: false })
    await examine(page, 'empty', 1400)
    await openDemo(page)
    await step(page, 'On site')
    await page.getByText('Leak round', { exact: true }).click()
    await page.locator('[data-stop="hatches"]').getByRole('button', { name: 'leak found' }).click()
    await page.locator('[data-stop="keyholes"]').getByRole('button', { name: 'tight' }).click()
    for (const name of ['Before', 'On site', 'Result'] as const) {
      await step(page, name)
      await examine(page, name.toLowerCase().replace(' ', '-'), 1400)
    }
    await type(page, 'F8', '9O.3')
    await page.locator('[data-rule="unusable-entry"]:visible').waitFor()
    await page.getByText('Show the working').click()
    await page.locator('.block summary').nth(5).click()
    await examine(page, 'broken', 1400)
    await page.getByRole('button', { name: 'All tests' }).click()
    await page.locator('.kept-test').waitFor()
    await examine(page, 'all-tests', 1400)
  })

  it('a test that asks, one that fails and one that is under way look right and are accessible in every step', async () => {
    const everyStep = async (page: Page, state: string): Promise<void> => {
      for (const name of ['Before', 'On site', 'Result'] as const) {
        await step(page, name)
        // What a state changes is on site above all; the other steps are looked at where they have least room.
        const widths = name === 'On site' ? COLOURED : COLOURED.slice(0, 1)
        await examine(page, `${state}-${name.toLowerCase().replace(' ', '-')}`, 1400, widths)
      }
    }
    const { page: asks } = await world.open('', { viewport: { width: 1280, height: 1400 } })
    // Neither the day, nor the units of volume and flow are sure.
    const log =
      'Building;Plot 4 (invented)\nDate;03/04/2026\nVolume;8600\nOutside;9\nInside;20\n\nPressure;Flow;Pressure;Flow\n' +
      [60, 50, 40, 30, 20, 12]
        .map((p) => [-p, 21 * p ** 0.65, p, 22 * p ** 0.65].map(Math.round).join(';'))
        .join('\n')
    await openLog(asks, { name: 'asked.csv', buffer: Buffer.from(log) })
    await asks.locator('.own-answer').first().waitFor()
    await everyStep(asks, 'asked')
    await asks.close()

    const { page: fails } = await world.open('', { viewport: { width: 1280, height: 1400 } })
    await openDemo(fails)
    await type(fails, 'B17', '150')
    await fails.locator('[data-outcome="misses"]').waitFor()
    await everyStep(fails, 'fails')
    await fails.close()

    const { page: typed } = await world.open('', { viewport: { width: 1280, height: 1400 } })
    await field(typed, 'Building *').fill('Barn (invented)')
    await field(typed, 'Internal volume').fill('400')
    await step(typed, 'On site')
    await field(typed, 'Indoor temperature').fill('20')
    await field(typed, 'Barometric pressure').fill('1009')
    // The third reading lies off the line.
    for (const [row, flow] of [129, 116, 119, 86].entries()) {
      await typed
        .getByLabel(`Pressure, reading ${row + 1}`, { exact: true })
        .fill(String([60, 51, 40, 32][row]))
      await typed.getByLabel(`Air flow, reading ${row + 1}`, { exact: true }).fill(String(flow))
    }
    await typed.getByRole('button', { name: 'It is 1009 hPa' }).waitFor()
    await typed.locator('.repeat').waitFor()
    await everyStep(typed, 'typed')
  })

  it('the views of the office look right and are accessible with something in each', async () => {
    const homes = [
      await workbook('flat-1.xlsx', home(1, 0.42, 'fabric')),
      await workbook('flat-2.xlsx', home(2, 0.75, 'acceptance')),
      { name: 'note.txt', mimeType: 'text/plain', buffer: Buffer.from('no workbook') },
    ]
    const [first] = homes
    const altered = new Tamperer(first?.buffer ?? Buffer.alloc(0))
    const cell = altered
      .cells()
      .find(({ sheet, xml }) => sheet === 'Readings' && /<v>-?6\d\.\d<\/v>/.test(xml))
    if (!cell) throw new Error('the summary has no such reading')
    const changed = {
      ...homes[0],
      name: 'changed.xlsx',
      buffer: Buffer.from(altered.with(cell, withNumber(cell, 61.7))),
    }
    const { page } = await world.open('', { viewport: { width: 1280, height: 1000 } })
    for (const [name, files, shown] of [
      ['Building', homes, '.several'],
      ['Stages', homes, '.several'],
      ['Month', homes, '.sortable'],
      ['Re-run', [homes[0], changed], '.sortable'],
    ] as const) {
      await page.setViewportSize({ width: 1280, height: 1000 })
      await toView(page, name)
      await page.getByLabel('Workbooks').setInputFiles(files as Chosen[])
      await page.locator(shown).first().waitFor()
      await page.locator('.archive').evaluate((archive) => {
        for (const one of archive.querySelectorAll('details')) one.open = true
      })
      await examine(page, name.toLowerCase(), 1000)
    }
  })
})

describe('room', () => {
  it('nothing is wider than the window, and no label is cut, from 320 to 1200 px', async () => {
    const { page } = await world.open('', { viewport: { width: 800, height: 900 } })
    await openDemo(page)
    const steps = ['Before', 'On site', 'Result'] as const
    for (const [width, name] of [320, 350, 480, 800, 1200].flatMap((at) =>
      steps.map((one) => [at, one] as const),
    )) {
      await page.setViewportSize({ width, height: 900 })
      await step(page, name)
      await drawn(page)
      const wide = await page.evaluate(() => document.documentElement.scrollWidth)
      expect(wide, `${name}, ${width} px`).toBeLessThanOrEqual(width)
      const pane = await page
        .locator('.pane')
        .evaluate((element) => element.scrollWidth - element.clientWidth)
      expect(pane, `${name}, ${width} px`).toBeLessThanOrEqual(0)
      // No label is cut, and the target's name has room in its own menu.
      const cut = await page.evaluate(() => {
        const pen = document.createElement('canvas').getContext('2d')
        const isCut = (one: HTMLElement): boolean => {
          if (!(one instanceof HTMLSelectElement)) return one.scrollWidth > one.clientWidth + 1
          if (pen) pen.font = getComputedStyle(one).font
          return (pen?.measureText(one.selectedOptions[0]?.text ?? '').width ?? 0) > one.clientWidth
        }
        return [
          ...document.querySelectorAll<HTMLElement>('.field > label, [data-path="target.preset"] select'),
        ]
          .filter((one) => one.getClientRects().length > 0 && isCut(one))
          .map((one) => one.outerHTML.slice(0, 120))
      })
      expect(cut, `${name}, ${width} px`).toEqual([])
      // Nor is the gravest finding, in the line that says where the test stands.
      const unsaid = await page
        .locator('.standing .first-lines')
        .evaluate(({ scrollHeight, clientHeight }) => scrollHeight - clientHeight)
      expect(unsaid, `${name}, ${width} px`).toBeLessThanOrEqual(1)
    }
  })

  it('high contrast keeps verdict, marks and curve apart', async () => {
    const { page } = await world.open('', { viewport: { width: 800, height: 1400 }, forcedColors: 'active' })
    await openDemo(page)
    await type(page, 'F8', '9O.3')
    await page.locator('[data-rule="unusable-entry"]:visible').waitFor()
    expect(await violations(page)).toEqual([])
    await shoot(page, 'pane/800-high-contrast')
    // A mark lies on its own cell, not beside or below it.
    const off = await page
      .locator('.cell.marked')
      .first()
      .evaluate((cell) => {
        const row = cell.closest('.row')?.getBoundingClientRect()
        const { top, bottom } = cell.getBoundingClientRect()
        return row ? Math.max(Math.abs(top - row.top), Math.abs(bottom - row.bottom)) : Number.NaN
      })
    expect(off).toBeLessThanOrEqual(1)
    expect(
      await page.locator('.standing').evaluate((element) => getComputedStyle(element).borderTopStyle),
    ).toBe('solid')
    expect(
      await page
        .locator('.cell.marked')
        .first()
        .evaluate((element) => getComputedStyle(element).outlineStyle),
    ).toBe('dashed')
  })
})

describe('keyboard alone', () => {
  it('moves and selects in the grid, reaches the roles, and reads the points of the curve', async () => {
    const { page } = await world.open()
    await openLog(page)
    await page.locator('.sheet').focus()
    for (const key of ['ArrowDown', 'ArrowDown', 'ArrowRight', 'Shift+ArrowDown', 'Shift+ArrowRight'])
      await page.keyboard.press(key)
    await expect.poll(() => page.locator('input.address').inputValue(), { timeout: 8000 }).toBe('B3:C4')
    await page.keyboard.press('Home')
    await page.keyboard.press('F2')
    expect(await page.evaluate(() => document.activeElement?.className)).toBe('content')
    await page.getByRole('button', { name: 'Accept and calculate' }).focus()
    await page.keyboard.press('Enter')
    await outcome(page).waitFor()
    await page.locator('.point:visible').first().focus()
    await page
      .getByText(/depressurisation: [\d.]+ Pa, [\d.]+ m³\/h/)
      .first()
      .waitFor()
    expect(await page.locator('.told:visible').textContent()).toMatch(/% off the curve/)
  })

  it('types into the cells of the sheet: a key begins, Enter goes on to the cell below', async () => {
    const { page } = await world.open()
    await openLog(page, { name: 'typed.csv', buffer: Buffer.from('Pressure [Pa];Flow [m³/h]\n-50,5;100\n') })
    await page.locator('#cell-3-1').click()
    await page.keyboard.type('-41,5\n-33\n')
    await page.locator('#cell-4-1', { hasText: '-33' }).waitFor()
    expect(await page.locator('#cell-3-1').textContent()).toBe('-41.5')
    expect(await page.locator('input.address').inputValue()).toBe('A5')
    await page.locator('#cell-2-2').dblclick()
    expect(await page.evaluate(() => document.activeElement?.className)).toBe('content')
    // The file keeps its separator and its comma.
    const { name, bytes } = await downloadOf(page, () =>
      page.getByRole('button', { name: 'Save the log with 2 changes' }).click(),
    )
    expect(name).toBe('typed-corrected.csv')
    expect(Buffer.from(bytes).toString()).toBe('Pressure [Pa];Flow [m³/h]\n-50,5;100\n-41,5\n-33')
  })
})
