import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { cameraPicture } from './support/camera-picture.js'
import { field, openDemo, step } from './support/steps.js'
import { World } from './support/world.js'

const SOON = { timeout: 60_000 }

let world: World
beforeAll(async () => {
  world = await World.start()
})
afterAll(() => world?.stop())

/** Everything that this page's address has in the browser, read from the browser's own stores and not by the page's code. */
const stored = (page: Page) =>
  page.evaluate(async () => {
    const done = <T>(request: IDBRequest<T>) =>
      new Promise<T>((resolve, reject) => {
        request.onsuccess = () => resolve(request.result)
        request.onerror = () => reject(request.error)
      })
    const text = (value: unknown): string =>
      value instanceof Uint8Array
        ? new TextDecoder('latin1').decode(value)
        : JSON.stringify(value, (_, part) => (part instanceof Uint8Array ? text(part) : part))
    const database: Record<string, string[]> = {}
    for (const { name = '' } of await indexedDB.databases()) {
      const base = await done(indexedDB.open(name))
      for (const store of base.objectStoreNames) {
        const at = base.transaction(store).objectStore(store)
        const [keys, values] = await Promise.all([done(at.getAllKeys()), done(at.getAll())])
        database[`${name}.${store}`] = values.map((value, i) => `${JSON.stringify(keys[i])} ${text(value)}`)
      }
      base.close()
    }
    const caches: string[] = []
    for (const name of await window.caches.keys())
      for (const { url } of await (await window.caches.open(name)).keys()) caches.push(url)
    return {
      database,
      local: { ...localStorage },
      session: { ...sessionStorage },
      caches,
      cookies: document.cookie,
    }
  })

const allTests = (page: Page) => page.getByRole('button', { name: 'All tests' }).click()
const saved = (page: Page) => page.locator('[data-saved="yes"]').waitFor()

/** A test with a log, a changed entry and a photo of a leak; its words are nowhere else in the page. */
async function enterTest(page: Page): Promise<void> {
  await openDemo(page)
  await step(page, 'Before')
  await field(page, 'Why 50 Pa was not reached').fill('quillwork atrium (invented)')
  await step(page, 'On site')
  await page.getByText('Leak round', { exact: true }).click()
  const stop = page.locator('[data-stop="hatches"]')
  await stop.getByRole('button', { name: 'leak found' }).click()
  await stop.locator('input[type=file]').setInputFiles({
    name: 'IMG_0001.jpg',
    mimeType: 'image/jpeg',
    buffer: await cameraPicture(page, 400, 300),
  })
  await stop.locator('[data-photo="leak-1.jpg"] canvas').waitFor()
  await saved(page)
}

describe('on a shared computer', () => {
  it('“Remove from this device” leaves nothing of a test in the browser’s database, storage or caches, also after a reload', async () => {
    const { page, complaints } = await world.open('', { keepsPage: true })
    await page.locator('[data-offline="yes"]').waitFor({ timeout: 60_000 })
    await enterTest(page)
    const before = await stored(page)
    expect(JSON.stringify(before.database)).toContain('quillwork atrium')
    const counts = ({ database }: typeof before) =>
      Object.fromEntries(Object.entries(database).map(([store, rows]) => [store, rows.length]))
    expect(counts(before)).toEqual({ 'draughtbook.tests': 1, 'draughtbook.logs': 1, 'draughtbook.photos': 1 })
    const [id = ''] = /[\w-]{20,}/.exec(before.database['draughtbook.tests']?.[0] ?? '') ?? []
    await page.getByRole('button', { name: 'New test' }).click()
    await field(page, 'Building *').fill('Barn (invented)')
    await saved(page)

    await allTests(page)
    const row = page.locator('.kept-test', { hasText: 'House 7' })
    await row.getByRole('button', { name: /^Remove from this device/ }).click()
    await row.getByRole('alertdialog').getByRole('button', { name: 'Remove from this device' }).click()
    await row.waitFor({ state: 'detached' })
    for (const when of ['at once', 'after a reload']) {
      const now = await stored(page)
      expect(counts(now), when).toEqual({
        'draughtbook.tests': 1,
        'draughtbook.logs': 0,
        'draughtbook.photos': 0,
      })
      for (const words of ['quillwork', 'House 7', 'demo-log.xlsx', id])
        expect(JSON.stringify(now), `${words} ${when}`).not.toContain(words)
      // Answers of the service are kept nowhere: only files of the page itself are.
      expect(now.caches.filter((url) => !url.startsWith(world.base) || url.includes('/v1/'))).toEqual([])
      await page.reload()
      await expect.poll(() => field(page, 'Building *').inputValue(), SOON).toBe('Barn (invented)')
    }
    expect(complaints).toEqual([])
  })

  it('“Remove everything from this device” leaves no test, answer about logs or access token, also after a reload', async () => {
    const { page, complaints } = await world.open()
    await page.evaluate(() => {
      localStorage.setItem('draughtbook.access-token', 'invented-token')
      sessionStorage.setItem('draughtbook.access-token', 'invented-token')
      localStorage.setItem('draughtbook.layouts', '[{"name":"quillwork layout"}]')
      localStorage.setItem('another.page', 'stays')
    })
    await enterTest(page)
    await allTests(page)
    await page.getByRole('button', { name: 'Remove everything from this device' }).click()
    const question = page.getByRole('alertdialog', { name: 'Remove everything' })
    await question.getByRole('button', { name: 'Cancel' }).click()
    await page.locator('.kept-test').waitFor()
    await page.getByRole('button', { name: 'Remove everything from this device' }).click()
    await question.getByRole('button', { name: 'Remove everything' }).click()
    await page.getByText(/^No tests yet/).waitFor()
    await question.waitFor({ state: 'detached' })
    const emptied = await stored(page)
    expect(Object.values(emptied.database).flat()).toEqual([])
    expect(emptied.local).toEqual({ 'another.page': 'stays' })
    expect(emptied.session).toEqual({})
    await page.reload()
    await page.locator('.step-before .fields').first().waitFor()
    await allTests(page)
    await page.getByText(/^No tests yet/).waitFor()
    const now = await stored(page)
    expect(Object.values(now.database).flat()).toEqual([])
    for (const words of ['quillwork', 'House 7', 'demo-log.xlsx', 'invented-token'])
      expect(JSON.stringify(now), words).not.toContain(words)
    expect(complaints).toEqual([])
  })
})
