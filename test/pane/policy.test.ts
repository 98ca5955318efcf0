import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { openDemo, origin, step } from './support/steps.js'
import { World } from './support/world.js'

/** The machine may be busy with other tests. */
// A service that a busy machine keeps waiting is asked again after 15 s.
const SOON = { timeout: 60_000 }

let world: World
beforeAll(async () => {
  world = await World.start()
})
afterAll(() => world?.stop())

describe('content security', () => {
  it('the plain page meets a policy without inline code, evaluation or foreign addresses, and calls only its service', async () => {
    const { page, complaints, asked } = await world.open('', { keepsPage: false })
    await openDemo(page)
    await expect.poll(() => origin(page).getAttribute('data-origin'), SOON).toBe('service')
    await step(page, 'Result')
    await page.getByText('Show the working').click()
    await page.locator('.block').first().waitFor()
    // Office.js adds a hidden telemetry frame after three seconds where it is loaded; the plain page has none.
    await page.waitForTimeout(5000)
    expect(await page.locator('iframe').count()).toBe(0)
    expect(complaints).toEqual([])
    expect(asked.filter((address) => !address.startsWith(world.base))).toEqual([])
  })

  it('serves the policies with the pages', async () => {
    const page = await fetch(world.base)
    const policy = page.headers.get('content-security-policy') ?? ''
    expect(policy).toContain("default-src 'none'")
    expect(policy).toContain("script-src 'self';")
    expect(policy).toContain("frame-ancestors 'none'")
    expect(policy).not.toMatch(/unsafe|https:|data:|\*/)
    const pane = await fetch(new URL('pane.html', world.base))
    const wider = pane.headers.get('content-security-policy') ?? ''
    expect(wider).toContain("script-src 'self' https://appsforoffice.microsoft.com;")
    expect(wider).not.toMatch(/unsafe|data:/)
    expect(wider).toContain("connect-src 'self';")
  })

  it('pane.html says what it waits for while Office.js is blocked, and goes on as a plain page', async () => {
    const context = await world.context()
    const page = await context.newPage()
    await page.route('https://appsforoffice.microsoft.com/**', (route) => route.abort())
    await page.clock.install()
    await page.goto(new URL('pane.html', world.base).href)
    await page.getByText('Waiting for Excel').or(page.getByText('Office.js could not be loaded')).waitFor()
    await page.clock.fastForward(6500)
    await page.getByText('Office.js could not be loaded').waitFor({ timeout: 30_000 })
    await page.getByRole('button', { name: 'Continue without Excel' }).click()
    await page.getByRole('button', { name: 'Open a test log' }).waitFor()
    expect(await page.getByText('Waiting for Excel').count()).toBe(0)
  })

  it('pane.html does not wait for ever for an Office.js that never answers', async () => {
    const context = await world.context()
    const page = await context.newPage()
    await page.route('https://appsforoffice.microsoft.com/**', (route) =>
      route.fulfill({
        contentType: 'text/javascript',
        body: 'window.Office = { onReady: () => new Promise(() => {}) }',
      }),
    )
    await page.clock.install()
    await page.goto(new URL('pane.html', world.base).href)
    await page.getByText('Waiting for Excel').waitFor()
    await page.clock.fastForward(6500)
    await page.getByText('Excel has not answered yet').waitFor({ timeout: 30_000 })
    expect(await page.getByRole('button', { name: 'Continue without Excel' }).count()).toBe(1)
  })

  it('pane.html takes an answer of Excel that comes late, but not over the plain page once that is chosen', async () => {
    const context = await world.context()
    const page = await context.newPage()
    await page.route('https://appsforoffice.microsoft.com/**', (route) =>
      route.fulfill({
        contentType: 'text/javascript',
        body: `window.CustomFunctions = { associate: () => {} }
          window.Office = { onReady: () => new Promise((answer) => { window.answer = () => answer({ host: 'Excel' }) }),
            context: { requirements: { isSetSupported: () => false } } }`,
      }),
    )
    const answer = () => page.evaluate(() => (window as unknown as { answer: () => void }).answer())
    await page.clock.install()
    await page.goto(new URL('pane.html', world.base).href)
    await page.getByText('Waiting for Excel').waitFor()
    await page.clock.fastForward(6500)
    await page.getByText('Excel has not answered yet').waitFor({ timeout: 30_000 })
    await answer()
    await page.getByText('This Excel is too old for the pane').waitFor()
    await page.reload()
    await page.getByRole('button', { name: 'Continue without Excel' }).click()
    await page.getByRole('button', { name: 'Open a test log' }).waitFor()
    await answer()
    await page.waitForTimeout(300)
    expect(await page.getByRole('button', { name: 'Open a test log' }).count()).toBe(1)
  })
})
