import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { field, openDemo, openLog, outcome, select, step, type } from './support/steps.js'
import { World } from './support/world.js'

const SOON = { timeout: 60_000 }

let world: World
beforeAll(async () => {
  world = await World.start()
})
afterAll(() => world?.stop())

const all = (page: Awaited<ReturnType<World['open']>>['page']) =>
  page.getByRole('button', { name: 'All tests' }).click()

describe('several tests', () => {
  it('stand beside each other with name, date, standing and size; any of them is opened again as it was', async () => {
    const { page, complaints } = await world.open()
    await openDemo(page)
    await type(page, 'B17', '250')
    await expect.poll(() => outcome(page).textContent(), SOON).not.toContain('n50 0.47 ')
    const first = await outcome(page).textContent()
    await page.getByRole('button', { name: 'New test' }).click()
    await outcome(page).waitFor({ state: 'detached' })
    expect(await page.locator('.page-grid').count()).toBe(0)
    await field(page, 'Building *').fill('Barn (invented)')
    await all(page)
    const rows = page.locator('.kept-test')
    await expect.poll(() => rows.count(), SOON).toBe(2)
    expect(await rows.nth(0).textContent()).toContain('Barn (invented)')
    const demo = await rows.nth(1).locator('.kept-open').textContent()
    expect(demo).toMatch(
      /House 7 \(invented\)14 October 2026 · (Meets|Misses) the target · log demo-log.xlsx · [\d.]+ kB/,
    )
    await page.getByText(/^Storage of this page: [\d.]+ \w+ of [\d.]+ \w+ used\.$/).waitFor()
    await rows.nth(1).locator('.kept-open').click()
    await outcome(page).waitFor()
    expect(await outcome(page).textContent()).toBe(first)
    await select(page, 'B17')
    expect(await page.getByLabel('Content of cell B17', { exact: true }).inputValue()).toBe('250')
    expect(complaints).toEqual([])
  })

  it('are copied as a retest: the house stands, readings are entered anew, the result is an earlier test', async () => {
    const { page } = await world.open()
    await openDemo(page)
    await all(page)
    await page.getByRole('button', { name: /^Copy as retest/ }).click()
    await expect.poll(() => field(page, 'Building *').inputValue(), SOON).toBe('House 7 (invented)')
    expect(await field(page, 'Stage').inputValue()).toBe('retest')
    expect(await field(page, 'Test date').inputValue()).toBe('')
    expect(await outcome(page).count()).toBe(0)
    await step(page, 'On site')
    await page.getByText('Leaks', { exact: true }).click()
    expect(await field(page, 'Date of the earlier test').inputValue()).toBe('2026-10-14')
  })

  it('are not mixed up: a log of the same name with other content is asked about', async () => {
    const { page } = await world.open()
    const log = (flow: number) => Buffer.from(`Pressure [Pa];Flow [m³/h]\n-50;${flow}\n-40;80\n`)
    await openLog(page, { name: 'log.csv', buffer: log(100) })
    await step(page, 'Before')
    await field(page, 'Building *').fill('Barn (invented)')
    await page.setInputFiles('input[aria-label="Test log"]', {
      name: 'log.csv',
      mimeType: 'text/csv',
      buffer: log(110),
    })
    const question = page.getByRole('alertdialog', { name: 'Question about the log' })
    await question.getByText('A log of the same name is kept with Barn (invented)').waitFor()
    await question.getByRole('button', { name: 'Start a new test with it' }).click()
    await page.locator('#cell-2-2', { hasText: '110' }).waitFor()
    await step(page, 'Before')
    expect(await field(page, 'Building *').inputValue()).toBe('')
    await all(page)
    await page.locator('.kept-test', { hasText: 'Barn' }).locator('.kept-open').click()
    await page.locator('#cell-2-2', { hasText: '100' }).waitFor()
  })

  it('keep to themselves what was said of them', async () => {
    const { page } = await world.open()
    await openDemo(page)
    // The tester stands in a cell of the log: the list of cautions can be answered.
    await page.locator('.section-cautions > summary').click()
    await page.locator('.precaution').first().getByRole('button', { name: 'taken care of' }).click()
    await page.locator('.precaution.given').first().waitFor()
    await step(page, 'Result')
    await page.getByRole('button', { name: 'Download the summary workbook' }).click()
    await page.getByText(/^Downloaded House-7/).waitFor()
    expect(await page.locator('.findings:visible li').count()).toBeGreaterThan(0)
    await openLog(page, { name: 'other.csv', buffer: Buffer.from('Pressure [Pa];Flow [m³/h]\n-50;100\n') })
    await page.locator('[data-step="site"][aria-current="step"]').waitFor()
    await outcome(page).waitFor({ state: 'detached' })
    await step(page, 'Result')
    await page.locator('[data-step="result"][aria-current="step"]').waitFor()
    expect(await page.getByText(/^Downloaded/).count()).toBe(0)
    // The findings of the first log name its cells on sheet Log.
    expect(await page.locator('.findings').getByText('Log!').count()).toBe(0)
  })

  it('follow what another tab enters, and are not kept once more where another tab has removed them', async () => {
    const { page } = await world.open()
    // On a slow device the calculation is there long after what was typed: what follows is kept with the test only then.
    let letThrough: () => void = () => undefined
    const asked = new Promise<void>((resolve) => {
      letThrough = resolve
    })
    await page.route(/\/live-[^/]*\.js$/, async (route) => {
      await asked
      await route.continue()
    })
    await field(page, 'Building *').fill('Barn (invented)')
    // A driven browser calls no page hidden, but a tab behind another is: it takes up changes when it comes to the front.
    await page.evaluate(() =>
      Object.defineProperty(document, 'hidden', { get: () => true, configurable: true }),
    )
    const other = await page.context().newPage()
    other.setDefaultTimeout(30_000)
    await other.goto(world.base)
    await expect.poll(() => field(other, 'Building *').inputValue(), SOON).toBe('Barn (invented)')
    await field(other, 'Internal volume').fill('300')
    await other.locator('[data-saved="yes"]').waitFor()
    letThrough()
    await page.locator('option', { hasText: 'Passive house, new' }).first().waitFor({ state: 'attached' })
    await page.bringToFront()
    await page.evaluate(() => {
      Reflect.deleteProperty(document, 'hidden')
      window.dispatchEvent(new Event('focus'))
    })
    await expect.poll(() => field(page, 'Internal volume').inputValue(), SOON).toBe('300')
    await field(page, 'Site').fill('Invented Court')
    await other.bringToFront()
    await expect.poll(() => field(other, 'Site').inputValue(), SOON).toBe('Invented Court')
    expect(await field(other, 'Internal volume').inputValue()).toBe('300')
    // Removed here, it is not kept once more by the other tab.
    await page.bringToFront()
    await all(page)
    await page.getByRole('button', { name: /^Remove from this device/ }).click()
    await page.getByRole('alertdialog').getByRole('button', { name: 'Remove from this device' }).click()
    await page.getByText(/^No tests yet/).waitFor()
    await other.getByText('This test was removed from this device in another tab.').waitFor()
    expect(await field(other, 'Site').inputValue()).toBe('')
    await page.reload()
    await all(page)
    await page.getByText(/^No tests yet/).waitFor()
  })

  it('stay on the step that is chosen while a log just opened is being kept', async () => {
    const { page } = await world.open()
    // The database takes the log once the test says so.
    await page.evaluate(() => {
      const { put } = IDBObjectStore.prototype
      IDBObjectStore.prototype.put = function (...given) {
        const wait = (): void => {
          if (!('goOn' in window)) this.get('none').onsuccess = wait
        }
        if (this.name === 'logs') wait()
        return put.apply(this, given)
      }
    })
    await openLog(page)
    await page.getByRole('button', { name: 'Accept and calculate' }).waitFor()
    await step(page, 'Result')
    await page.evaluate(() => Object.assign(window, { goOn: true }))
    // The list is read after the log is written.
    await all(page)
    await page.locator('.kept-test', { hasText: 'demo-log.xlsx' }).waitFor()
    await page.getByRole('button', { name: 'Test', exact: true }).click()
    expect(await page.locator('[aria-current="step"]').textContent()).toContain('Result')
  })

  it('take no entries of the test on show while their log is still being read', async () => {
    const { page } = await world.open()
    await openDemo(page)
    await page.getByRole('button', { name: 'New test' }).click()
    await outcome(page).waitFor({ state: 'detached' })
    await field(page, 'Building *').fill('Barn (invented)')
    await page.evaluate(() => {
      const { postMessage } = Worker.prototype
      const goOn = new Promise((resolve) => Object.assign(window, { goOn: resolve }))
      Worker.prototype.postMessage = function (...given: [unknown]) {
        void goOn.then(() => postMessage.apply(this, given))
      }
    })
    await all(page)
    await page.locator('.kept-test', { hasText: 'House 7' }).locator('.kept-open').click()
    await page.getByRole('button', { name: 'Test', exact: true }).click()
    await field(page, 'Site').fill('Invented Court')
    await page.evaluate(() => (window as unknown as { goOn: () => void }).goOn())
    await outcome(page).waitFor()
    await step(page, 'Before')
    // The log says where the house stands.
    expect(await page.locator('[data-path="building.site"] .link').textContent()).toContain('Log!')
    await all(page)
    await page.locator('.kept-test', { hasText: 'Barn' }).locator('.kept-open').click()
    await outcome(page).waitFor({ state: 'detached' })
    expect(await field(page, 'Site').inputValue()).toBe('Invented Court')
  })

  it('begin with an empty log, filled in on the page and read without a question', async () => {
    const { page, complaints } = await world.open()
    await page.getByRole('button', { name: 'Start an empty log' }).click()
    await page.locator('.book-name', { hasText: 'test-log.xlsx' }).waitFor()
    await page.getByText('Fill in the log in the sheet. Still empty: building').waitFor()
    expect(await page.getByRole('alert').count()).toBe(0)
    // Over each cell to be filled in stands what belongs there.
    const place = async (label: string): Promise<string> => {
      const tag = page.locator('.cell', {
        has: page.locator('.role-tag', { hasText: new RegExp(`^${label}$`) }),
      })
      const [, row, column] = /^cell-(\d+)-(\d+)$/.exec((await tag.first().getAttribute('id')) ?? '') ?? []
      return `${String.fromCharCode(64 + Number(column))}${row}`
    }
    await type(page, await place('Building'), 'Barn (invented)')
    await page.getByText('Still empty: test date').waitFor()
    await page.locator('[data-saved="yes"]').waitFor()
    await page.reload()
    await page.locator('.cell', { hasText: 'Barn (invented)' }).waitFor()
    await page.getByText('Still empty: test date').waitFor()
    expect(await page.locator('.questions li').count()).toBe(0)
    expect(complaints).toEqual([])
  })

  it('kept by earlier versions are taken over', async () => {
    const { page } = await world.open()
    await page.evaluate(() =>
      localStorage.setItem(
        'draughtbook.test:',
        JSON.stringify({
          version: 1,
          fields: { 'building.name': { text: 'Old barn (invented)' } },
          runs: {},
        }),
      ),
    )
    await page.reload()
    await expect.poll(() => field(page, 'Building *').inputValue(), SOON).toBe('Old barn (invented)')
    expect(await page.evaluate(() => localStorage.getItem('draughtbook.test:'))).toBeNull()
  })
})
