import { mkdtemp, rm } from 'node:fs/promises'
import { createServer } from 'node:http'
import type { AddressInfo } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { createApp } from '../../service/src/app.js'
import { makeToken } from '../../service/src/security/tokens/token.js'
import { writeTokens } from '../../service/src/security/tokens/token-file.js'
import { settings } from '../service/support/settings.js'
import { field, openDemo, openLog, origin } from './support/steps.js'
import { World } from './support/world.js'

const SOON = { timeout: 60_000 }

let world: World
let folder: string
beforeAll(async () => {
  world = await World.start()
  folder = await mkdtemp(join(tmpdir(), 'draughtbook-tokens-'))
})
afterAll(async () => {
  await world?.stop()
  await rm(folder, { recursive: true, force: true })
})

describe('a service that asks who you are', () => {
  it('is worked without until the token is entered, then with it until the tab is closed; it is kept longer only by choice', async () => {
    const tokens = join(folder, 'tokens.json')
    const { token, stored } = makeToken('office', 1, ['evaluate', 'archive'])
    await writeTokens(tokens, [stored])
    const server = createServer(createApp({ settings: settings({ tokens, pane: world.folder }) }))
    await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve))
    const base = `http://127.0.0.1:${(server.address() as AddressInfo).port}/`
    const { page } = await world.open(base)
    await openDemo(page)
    await expect.poll(() => origin(page).getAttribute('data-origin'), SOON).toBe('access')
    expect(await origin(page).textContent()).toContain('the service needs an access token')
    await field(page, 'Access token').fill(token)
    await page.getByRole('button', { name: 'Use', exact: true }).click()
    await expect.poll(() => origin(page).getAttribute('data-origin'), SOON).toBe('service')
    await page.reload()
    // What was accepted before is kept with the log, so nothing is proposed again.
    await openLog(page)
    await expect.poll(() => origin(page).getAttribute('data-origin'), SOON).toBe('service')
    const kept = () =>
      page.evaluate(
        (given) => [localStorage, sessionStorage].map((place) => Object.values(place).includes(given)),
        token,
      )
    expect(await kept()).toEqual([false, true])
    const next = await page.context().newPage()
    next.setDefaultTimeout(30_000)
    await next.goto(base)
    await expect.poll(() => origin(next).getAttribute('data-origin'), SOON).toBe('access')
    await field(next, 'Access token').fill(token)
    await next.getByLabel('Keep it in this browser').check()
    await next.getByRole('button', { name: 'Use', exact: true }).click()
    await expect.poll(() => origin(next).getAttribute('data-origin'), SOON).toBe('service')
    expect(await kept()).toEqual([true, true])
    server.closeAllConnections()
    server.close()
  })
})
