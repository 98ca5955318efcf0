import { mkdtemp, rm } from 'node:fs/promises'
import { createServer, type Server } from 'node:http'
import type { AddressInfo } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import express from 'express'
import type { Page } from 'playwright-core'
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest'
import { ServiceClient } from '../../addin/src/service/service-client.js'
import { createApp } from '../../service/src/app.js'
import { settings } from '../service/support/settings.js'
import { openLog } from './support/steps.js'
import { World } from './support/world.js'

/** A log of an invented make that never states the unit of its flows. */
function logOf(house: string, volume: number, pressures: readonly number[]) {
  const flow = (pressure: number) => (20 * Math.abs(pressure) ** 0.65).toFixed(1)
  const rows = [
    ['Draught check sheet', ''],
    ['House', house],
    ['Date', '2026-10-14'],
    ['Volume of air inside (m³)', volume],
    ['Temp in (°C)', 20],
    ['Temp out (°C)', 9],
    ['', ''],
    ['Depressurisation', ''],
    ['Building pressure (Pa)', 'Fan flow'],
    ...pressures.map((pressure) => [pressure, flow(pressure)]),
  ]
  return { name: `${house}.csv`, buffer: Buffer.from(`${rows.map((row) => row.join(',')).join('\n')}\n`) }
}
const FIRST = logOf('Plot 1', 300, [-60, -50, -40, -30, -20])
const SECOND = logOf('Plot 2', 410, [-62, -55, -47, -40, -33, -25, -18])

let world: World
beforeAll(async () => {
  world = await World.start()
})
afterAll(() => world?.stop())

const servers: Server[] = []
const folders: string[] = []
afterEach(async () => {
  for (const server of servers.splice(0)) {
    server.closeAllConnections()
    server.close()
  }
  for (const folder of folders.splice(0)) await rm(folder, { recursive: true, force: true })
})

/** A service with the built pane and a library that is empty; what it says of the firm waits for `held`. */
async function serviceWithLibrary(held: Promise<void> = Promise.resolve()) {
  const library = await mkdtemp(join(tmpdir(), 'draughtbook-library-'))
  folders.push(library)
  const app = express()
  app.use('/v1/firm', (_request, _response, next) => void held.then(() => next()))
  app.use(createApp({ settings: settings({ library, pane: world.folder }) }))
  const server = createServer(app)
  servers.push(server)
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve))
  const base = `http://127.0.0.1:${(server.address() as AddressInfo).port}/`
  return { base, client: new ServiceClient(new URL(base)) }
}

const question = (page: Page) => page.locator('[data-question="flow.unit"]')
const accept = (page: Page) => page.getByRole('button', { name: 'Accept and calculate' })

async function answerInLitres(page: Page): Promise<void> {
  await question(page).getByRole('textbox').fill('l/s')
  await question(page).getByRole('button', { name: 'Answer' }).click()
  await question(page).waitFor({ state: 'detached' })
  await accept(page).click()
}

describe('answers about a log and the firm’s library', () => {
  it('are kept there with one click, and asked of nobody else', async () => {
    const { base, client } = await serviceWithLibrary()
    const { page, complaints } = await world.open(base)
    await openLog(page, FIRST)
    await answerInLitres(page)
    await page.getByText('Your answers are kept in this browser, for other logs of this kind.').waitFor()
    await page.getByRole('button', { name: 'Keep the answers in the firm’s library' }).click()
    await page
      .getByText('Your answers are kept in the firm’s library as layouts/logs-like-plot-1-csv.')
      .waitFor()
    const entries = await client.library('layouts')
    expect(entries).toMatchObject([
      { id: 'logs-like-plot-1-csv', value: { answers: { 'flow.unit': 'l/s' } } },
    ])

    // Another browser, which has kept nothing.
    const other = await world.open(base)
    await openLog(other.page, SECOND)
    await accept(other.page).waitFor()
    expect(await question(other.page).count()).toBe(0)
    await other.page.getByText('Read by the layout "logs like Plot 1.csv"').waitFor()
    expect([...complaints, ...other.complaints]).toEqual([])
  })

  it('are offered again when the test is opened later', async () => {
    const { base, client } = await serviceWithLibrary()
    const { page, complaints } = await world.open(base)
    await openLog(page, FIRST)
    await answerInLitres(page)
    await page.getByRole('button', { name: 'Keep the answers in the firm’s library' }).waitFor()
    await page.locator('[data-saved="yes"]').waitFor()
    await page.reload()
    await page.getByRole('button', { name: 'Keep the answers in the firm’s library' }).click()
    await page
      .getByText('Your answers are kept in the firm’s library as layouts/logs-like-plot-1-csv.')
      .waitFor()
    expect(await client.library('layouts')).toMatchObject([
      { id: 'logs-like-plot-1-csv', value: { answers: { 'flow.unit': 'l/s' } } },
    ])
    expect(complaints).toEqual([])
  })

  it('say why when the library does not take them', async () => {
    const { base } = await serviceWithLibrary()
    const { page } = await world.open(base)
    await openLog(page, FIRST)
    await answerInLitres(page)
    await page.route('**/v1/library/layouts/*', (route) =>
      route.fulfill({
        status: 507,
        json: { title: 'The library cannot be written', detail: 'the disk is full' },
      }),
    )
    await page.getByRole('button', { name: 'Keep the answers in the firm’s library' }).click()
    await page.getByRole('alert').getByText('Not kept in the firm’s library: the disk is full.').waitFor()
    await page.unroute('**/v1/library/layouts/*')
    await page.getByRole('button', { name: 'Keep the answers in the firm’s library' }).click()
    await page.getByText('Your answers are kept in the firm’s library').waitFor()
    expect(await page.getByRole('alert').count()).toBe(0)
  })

  it('do not hold up a log while the service hangs; the log is read again when the layouts come', async () => {
    let answer: () => void = () => undefined
    const { base, client } = await serviceWithLibrary(new Promise((resolve) => (answer = resolve)))
    const layout = {
      format: 'draughtbook/layout@1' as const,
      name: 'Our sheets',
      fingerprint: { labels: ['Building pressure (Pa)', 'Fan flow', 'Temp in (°C)'] },
      fields: [],
      answers: { 'flow.unit': 'l/s' },
    }
    await client.save('layouts', 'our-sheets', layout, undefined)
    const { page } = await world.open(base)
    await openLog(page, FIRST)
    await question(page).waitFor()
    const late = page.getByText('The service has not answered. The log is read without the firm’s layouts.')
    await late.waitFor()
    answer()
    await question(page).waitFor({ state: 'detached' })
    await page.getByText('Read by the layout "Our sheets"').waitFor()
    expect(await late.count()).toBe(0)
  })
})
