import type { Page, Route } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { putNextBuild } from './support/next-build.js'
import { field, openDemo, origin, outcome, toView, type } from './support/steps.js'
import { World } from './support/world.js'

const SOON = { timeout: 60_000 }

let world: World
beforeAll(async () => {
  world = await World.start({ changes: true })
})
afterAll(() => world?.stop())

const saved = (page: Page) => page.locator('[data-saved="yes"]').waitFor()
const alert = (page: Page, words: string) => page.getByRole('alert').getByText(words).waitFor()

describe('what goes wrong around the page', () => {
  it('a service that fails: the page says how, calculates by itself, and takes what is typed', async () => {
    const { page } = await world.open()
    let answer: (route: Route) => Promise<void> = (route) => route.fulfill({ status: 500, body: 'broken' })
    await page.route('**/v1/evaluations*', (route) => answer(route))
    await openDemo(page)
    await expect.poll(() => origin(page).textContent(), SOON).toContain('the service answered 500')
    for (const [flow, how, words] of [
      ['310', (route: Route) => route.fulfill({ status: 503, body: '' }), 'the service answered 503'],
      ['311', (route: Route) => route.abort('connectionreset'), 'the service cannot be reached'],
      [
        '312',
        (route: Route) => route.fulfill({ status: 200, contentType: 'text/html', body: '<p>Sign in' }),
        'the service cannot be reached',
      ],
      ['313', (route: Route) => route.fulfill({ status: 200, json: {} }), 'what answered is not the service'],
      // Never answered: what was typed is calculated all the same.
      ['314', async () => undefined, 'asking the service'],
    ] as const) {
      answer = how
      const before = await outcome(page).textContent()
      await type(page, 'B17', flow)
      await expect.poll(() => origin(page).textContent(), SOON).toContain(words)
      expect(await outcome(page).textContent()).not.toBe('')
      if (flow === '310') expect(await outcome(page).textContent()).not.toBe(before)
    }
    await saved(page)
  })

  it('storage that is switched off or never answers: the page works on and says what it cannot keep', async () => {
    for (const refuse of [
      () => {
        IDBFactory.prototype.open = () => {
          throw new DOMException('refused', 'SecurityError')
        }
      },
      () => {
        const { open } = IDBFactory.prototype
        IDBFactory.prototype.open = function (...given) {
          const request = open.apply(this, given)
          request.addEventListener = () => undefined
          return request
        }
      },
    ]) {
      const context = await world.context()
      await context.addInitScript(refuse)
      await context.addInitScript(() => localStorage.setItem('draughtbook.open', 'a test shown before'))
      const page = await context.newPage()
      page.setDefaultTimeout(30_000)
      await page.goto(world.base)
      await alert(page, 'The tests kept in this browser could not be read')
      await field(page, 'Building *').fill('Barn (invented)')
      await page.locator('.standing', { hasText: 'Missing' }).waitFor()
      expect(await page.locator('[data-saved="yes"]').count()).toBe(0)
      await context.close()
    }
  })

  it('no room for the page itself: it says that it does not work offline, and works on', async () => {
    const context = await world.context({ keepsPage: true })
    const page = await context.newPage()
    page.setDefaultTimeout(30_000)
    const session = await context.newCDPSession(page)
    await session.send('Storage.overrideQuotaForOrigin', {
      origin: new URL(world.base).origin,
      quotaSize: 2_000_000,
    })
    await page.goto(world.base)
    const said = page.locator('[data-offline="no"]')
    await said.waitFor({ timeout: 60_000 })
    expect(await said.textContent()).toContain('Check that this device has free space')
    await field(page, 'Building *').fill('Barn (invented)')
    await page.locator('.standing', { hasText: 'Missing' }).waitFor()
    await saved(page)
  })

  it('a next build on the service: open tests go on, nothing mixes the two, and it is taken at the next opening', async () => {
    const { page, complaints } = await world.open('', { keepsPage: true })
    await page.locator('[data-offline]').waitFor({ timeout: 60_000 })
    await field(page, 'Building *').fill('Barn (invented)')
    await saved(page)
    // A page that the browser could not keep: its later parts are gone from the service.
    const without = await world.open('', { keepsPage: false })
    await putNextBuild(world.folder, 'the next build')
    world.servePane()

    await field(without.page, 'Building *').fill('Shed (invented)')
    await alert(without.page, 'A part of this page could not be loaded')
    await saved(without.page)
    await without.page.reload()
    await expect.poll(() => field(without.page, 'Building *').inputValue(), SOON).toBe('Shed (invented)')
    expect(await without.page.title()).toBe('the next build')
    await without.page.locator('.standing', { hasText: 'Missing' }).waitFor()

    await toView(page, 'Month')
    await page.getByText('Workbooks').first().waitFor()
    await toView(page, 'Test')
    const second = await page.context().newPage()
    await second.goto(world.base)
    await page.locator('[data-newer]').waitFor()
    expect(await second.title()).not.toBe('the next build')
    expect(await field(page, 'Building *').inputValue()).toBe('Barn (invented)')
    expect(complaints).toEqual([])
    const context = page.context()
    await page.close()
    await second.close()
    await expect
      .poll(async () => {
        const next = await context.newPage()
        await next.goto(world.base)
        const title = await next.title()
        if (title !== 'the next build') await next.close()
        return title
      }, SOON)
      .toBe('the next build')
    const [next] = context.pages()
    if (!next) throw new Error('no page is open')
    await expect.poll(() => field(next, 'Building *').inputValue(), SOON).toBe('Barn (invented)')
    await toView(next, 'Month')
    await next.getByText('Workbooks').first().waitFor()
  })
})
