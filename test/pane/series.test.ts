import { parseLayout, readLog } from '@draughtbook/shared-calc/log'
import type { Locator, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { modelFromLog } from '../addin/excel-wire/model-from-log.js'
import { gaugeSeries, gusts } from '../log/support/gauge-series.js'
import { violations } from './support/axe.js'
import { openInExcel } from './support/excel-page.js'
import { shoot } from './support/pictures.js'
import { field, finding, LOG_INPUT, openLog, outcome, select, step, type } from './support/steps.js'
import { World } from './support/world.js'

const SOON = { timeout: 60_000 }

let world: World
beforeAll(async () => {
  world = await World.start()
})
afterAll(() => world?.stop())

const flowAt = (pressure: number) => 60 * Math.abs(pressure) ** 0.65
const hold = (pressure_Pa: number, hold_s: number) => ({ pressure_Pa, flow: flowAt(pressure_Pa), hold_s })
const rest = { pressure_Pa: -1, flow: 0, hold_s: 60 }
/** An invented depressurisation at 2 Hz with gusts; the station near −25 Pa is given up after 12 s. */
const holds = [rest, ...[-62, -52, -42, -33].map((dp) => hold(dp, 40)), hold(-25, 12), hold(-18, 40), rest]

function gaugeLog(): Buffer {
  const gust = gusts(11, 0.7)
  const { time_s, pressure_Pa, flow } = gaugeSeries(holds, { rate_Hz: 2, noise: () => 0.25 * gust() })
  const rows = Array.from(time_s, (time, index) =>
    [time, (pressure_Pa[index] ?? 0).toFixed(2), Math.max(0, flow[index] ?? 0).toFixed(1)].join(','),
  )
  return Buffer.from(['Time (s),Pressure (Pa),Flow (m3/h)', ...rows].join('\n'))
}
const log = gaugeLog()

/** What the command line makes of the same file: the pane's reader must not differ from it. */
function byLayout() {
  const layout = parseLayout({
    format: 'draughtbook/layout@1',
    name: 'gauge',
    constants: { 'test.method': 'iso-9972:2015' },
    fields: [],
    series: [
      {
        direction: 'depressurisation',
        time: { at: { header: 'Time' } },
        pressure: { at: { header: 'Pressure' } },
        flow: { at: { header: 'Flow' } },
      },
    ],
  })
  const [test] = readLog(new Uint8Array(log), 'gauge.csv', { layout }).tests
  return { stations: test?.series[0]?.stations ?? [], findings: test?.findings ?? [] }
}

async function section(page: Page): Promise<Locator> {
  const body = page.locator('.section-series')
  if (!(await body.evaluate((element) => (element as HTMLDetailsElement).open)))
    await body.getByRole('heading', { name: 'Raw gauge series' }).click()
  return body
}

/** Opens the gauge's log, reads its series and takes the stations over as readings. */
async function takenOver(page: Page): Promise<Locator> {
  await openLog(page, { name: 'gauge.csv', buffer: log })
  const series = await section(page)
  await series.getByRole('button', { name: 'Read the series' }).click()
  await series.getByRole('button', { name: /^Use as readings/ }).click()
  return series
}

describe('a raw gauge series on the page', () => {
  it('is drawn with its stations, told of as the log reader has them, and taken over as readings', async () => {
    const { page, complaints } = await world.open()
    await openLog(page, { name: 'gauge.csv', buffer: log })
    const series = await section(page)
    await series.getByRole('button', { name: 'Read the series' }).click()
    await series.locator('.series-chart').waitFor()
    const { stations, findings } = byLayout()
    expect(stations.map(({ kind, rejected }) => rejected ?? kind)).toEqual([
      'zero-flow',
      'reading',
      'reading',
      'reading',
      'reading',
      'short',
      'reading',
      'zero-flow',
    ])
    expect(await series.locator('.station').count()).toBe(stations.length)
    const rows = series.locator('.stations tbody tr')
    for (const [index, { pressure, rejected }] of stations.entries()) {
      const cells = await rows.nth(index).locator('td').allInnerTexts()
      const shown = (text = '') => Number(text.split('\n')[0]?.replace('−', '-'))
      expect(shown(cells[0])).toBeCloseTo(pressure.mean, 1)
      expect(shown(cells[1]) / pressure.standardDeviation).toBeCloseTo(1, 1)
      expect(shown(cells[2]) / (pressure.standardUncertainty ?? 0)).toBeCloseTo(1, 1)
      expect(shown(cells[3])).toBe(pressure.samples)
      if (rejected) expect(await rows.nth(index).textContent()).toMatch(/rejected.*steady for only \d+ s/)
    }

    await series.getByRole('button', { name: 'Use as readings: 5 of depressurisation' }).click()
    await field(page, 'Indoor temperature').fill('20')
    await field(page, 'Outdoor temperature').fill('8')
    await step(page, 'Before')
    for (const [label, text] of [
      ['Building *', 'Plot 41 (invented)'],
      ['Internal volume *', '420'],
      ['Test date *', '2026-08-04'],
    ] as const)
      await field(page, label).fill(text)
    await step(page, 'On site')
    await outcome(page).waitFor()
    const run = page.getByRole('group', { name: /^Depressurisation/ })
    expect(await run.textContent()).toMatch(/5 readings, −61\.8 to −18\.0\sPa.*gauge!A1:C721/)
    expect(complaints).toEqual([])
    // The reader's own remarks came along, with their cells.
    const own = findings.filter(({ rule }) => rule === 'log-series-short')
    expect(own).toHaveLength(1)
    expect(await finding(page, 'log-series-short').textContent()).toContain(own[0]?.message)
  })

  it('says so when a cell under the stations changes, and stops when it is put back', async () => {
    const { page } = await world.open()
    const series = await takenOver(page)
    await page.getByText('5 readings').first().waitFor()
    await select(page, 'B150')
    const before = await page.getByLabel('Content of cell B150', { exact: true }).inputValue()
    await type(page, 'B150', '-30')
    await finding(page, 'log-series-changed').waitFor(SOON)
    await type(page, 'B150', before)
    await finding(page, 'log-series-changed').waitFor({ state: 'detached', ...SOON })
    await type(page, 'B150', '-30')
    await finding(page, 'log-series-changed').waitFor(SOON)
    await series.getByRole('button', { name: 'Read again' }).click()
    await series.getByRole('button', { name: /^Use as readings/ }).click()
    await finding(page, 'log-series-changed').waitFor({ state: 'detached', ...SOON })
    expect(await page.getByRole('alert').count()).toBe(0)
  })

  it('reads a series again that was taken over earlier, and notices another file of the same name', async () => {
    const { page } = await world.open()
    const series = await takenOver(page)
    await openLog(page, { name: 'other.csv', buffer: Buffer.from('Pa,m3/h\n1,2') })
    await series.locator('.series-chart').waitFor({ state: 'detached' })
    const other = Buffer.from(log.toString().replaceAll(/,-5(\d\.\d+)/g, ',-4$1'))
    const openAgain = async (buffer: Buffer): Promise<void> => {
      await page.setInputFiles(LOG_INPUT, { name: 'gauge.csv', mimeType: 'text/csv', buffer })
      await page.getByRole('button', { name: /^Use it for / }).click()
      await page.locator('.book-name', { hasText: 'gauge.csv' }).waitFor()
    }
    await openAgain(other)
    await series.locator('.series-chart').waitFor()
    await finding(page, 'log-series-changed').waitFor(SOON)
    await openAgain(log)
    await finding(page, 'log-series-changed').waitFor({ state: 'detached', ...SOON })
    expect(await series.getByRole('status').textContent()).toContain('5 readings')
  })

  it('asks for headings or columns where it cannot tell them', async () => {
    const { page } = await world.open()
    const bare = Buffer.from(log.toString().split('\n').slice(1).join('\n'))
    await openLog(page, { name: 'bare.csv', buffer: bare })
    const series = await section(page)
    await series.getByRole('button', { name: 'Read the series' }).click()
    const alert = page.getByRole('alert').getByText('name the columns, or give each a heading with its unit')
    await alert.waitFor()
    expect(await series.locator('.series-chart').count()).toBe(0)
    await series.getByText('Name the columns instead').click()
    for (const [label, letter] of [
      ['Time', 'a'],
      ['Pressure', 'b'],
      ['Flow', 'c'],
    ] as const)
      await series.getByLabel(label, { exact: true }).fill(letter)
    await series.getByRole('button', { name: 'Read the series' }).click()
    await series.locator('.series-chart').waitFor()
    expect(await series.getByRole('status').textContent()).toContain('5 readings')
    expect(await violations(page)).toEqual([])
    await shoot(series, 'pane/series-columns')
  })

  it('fits 350 and 800 px and breaks no rule of axe-core, light and dark', async () => {
    const { page } = await world.open('', { viewport: { width: 800, height: 1200 } })
    await openLog(page, { name: 'gauge.csv', buffer: log })
    const series = await section(page)
    for (const width of [350, 800]) {
      // The picture is drawn for the room there is when the series is read.
      await page.setViewportSize({ width, height: 1200 })
      await series.getByRole('button', { name: /^Read (the series|again)$/ }).click()
      await series.getByRole('button', { name: 'Read again' }).and(series.locator(':enabled')).waitFor()
      await series.locator('.series-chart').waitFor()
      await series.locator('details:not([open])').getByText('How the columns were found').click()
      for (const colorScheme of ['light', 'dark'] as const) {
        await page.emulateMedia({ colorScheme })
        expect(await violations(page), `${width} px, ${colorScheme}`).toEqual([])
        await shoot(series, `pane/series-${width}-${colorScheme}`)
      }
      const wide = await page.locator('.pane').evaluate((pane) => pane.scrollWidth - pane.clientWidth)
      expect(wide).toBeLessThanOrEqual(0)
      await series.getByText('How the columns were found').click()
    }
  })
})

describe('a raw gauge series in Excel', () => {
  it('is read from the selected cells, or from their sheet where only a few are selected', async () => {
    const workbook = modelFromLog(new Uint8Array(log), 'gauge.csv')
    const { page, complaints } = await openInExcel(world, workbook)
    await step(page, 'On site')
    const series = await section(page)
    workbook.selected = [workbook.active.GetRange('A1')]
    await series.getByRole('button', { name: 'Read the series' }).click()
    const status = series.getByRole('status')
    await status.getByText('5 readings, 2 zero-flow blocks, 1 rejected').waitFor()
    // The first half of the log; the station it breaks off in holds too briefly.
    workbook.selected = [workbook.active.GetRange('A2:C330')]
    await series.getByRole('button', { name: 'Read again' }).click()
    await status.getByText('gauge!A2:C330').waitFor()
    await status.getByText('2 readings, 1 zero-flow block, 1 rejected').waitFor()
    await series.getByRole('button', { name: /^Use as readings/ }).click()
    await page.getByRole('button', { name: 'gauge!A2:C330' }).first().click()
    await expect.poll(() => workbook.selected[0]?.Address, SOON).toBe('gauge!A2:C330')
    expect(await outcome(page).count()).toBe(0)
    expect(complaints).toEqual([])
  })
})
