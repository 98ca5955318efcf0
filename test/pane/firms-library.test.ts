import { mkdtemp, readFile, rm } from 'node:fs/promises'
import { createServer } from 'node:http'
import type { AddressInfo } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { parseRecord } from '@draughtbook/shared-calc'
import { readSummaryWorkbook } from '@draughtbook/shared-calc/workbook'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { ServiceClient } from '../../addin/src/service/service-client.js'
import { createApp } from '../../service/src/app.js'
import { settings } from '../service/support/settings.js'
import { downloadOf, field, openDemo, outcome, step } from './support/steps.js'
import { World } from './support/world.js'

// The demonstration log holds device pressures, so a device must have the ranges that it names.
const { flowDevice } = parseRecord(
  JSON.parse(await readFile(new URL('../demo/demo-record.json', import.meta.url), 'utf8')),
)
const ranges = flowDevice?.ranges ?? []

const SOON = { timeout: 60_000 }

let world: World
let library: string
beforeAll(async () => {
  world = await World.start()
  library = await mkdtemp(join(tmpdir(), 'draughtbook-library-'))
})
afterAll(async () => {
  await world?.stop()
  await rm(library, { recursive: true, force: true })
})

/** A service with the built pane and a library that holds one invented device. */
async function serviceWithLibrary() {
  const server = createServer(createApp({ settings: settings({ library, pane: world.folder }) }))
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve))
  const base = `http://127.0.0.1:${(server.address() as AddressInfo).port}/`
  const version = await new ServiceClient(new URL(base)).save(
    'devices',
    'fan-a',
    {
      format: 'draughtbook/device@1',
      name: 'Fan A',
      serial: 'invented 17',
      calibrationDue: '2027-05-01',
      referenceDensity_kg_m3: 1.2041,
      ranges,
    },
    undefined,
  )
  return { base, server, version }
}

describe('the firm’s library in the pane', () => {
  it('puts a device into the record, which then says where its copy is from; a change by hand ends that', async () => {
    const { base, server, version } = await serviceWithLibrary()
    const { page, complaints } = await world.open(base)
    await openDemo(page)
    await step(page, 'Before')
    await page
      .locator('summary', { hasText: /^Device/ })
      .first()
      .click()
    await page.getByRole('button', { name: 'Choose from the firm’s library' }).click()
    await field(page, 'Firm’s flow device').selectOption('fan-a')
    expect(await field(page, 'Flow device, serial').inputValue()).toBe('invented 17')
    const copied = page.getByText(`Copied from the library: devices/fan-a@${version}`)
    await copied.waitFor()
    await expect.poll(() => outcome(page).getAttribute('data-outcome'), SOON).toBe('meets')
    const download = page.getByRole('button', { name: 'Download the summary workbook' })
    await step(page, 'Result')
    const { bytes } = await downloadOf(page, () => download.click())
    const { record } = await readSummaryWorkbook(bytes)
    expect(record.flowDevice).toEqual({
      libraryEntry: `devices/fan-a@${version}`,
      serial: 'invented 17',
      calibrationDue: '2027-05-01',
      referenceDensity_kg_m3: 1.2041,
      ranges,
    })
    await step(page, 'Before')
    await field(page, 'Flow device, serial').fill('another')
    await copied.waitFor({ state: 'detached' })
    expect(complaints).toEqual([])
    server.closeAllConnections()
    server.close()
  })
})
