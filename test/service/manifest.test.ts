import { mkdtemp } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { checkXml } from '../../manifests/src/check-xml'
import { createApp } from '../../service/src/app'
import type { Settings } from '../../service/src/settings/settings'
import { listen } from './support/listen'
import { settings } from './support/settings'

const asked = async (changed: Partial<Settings>, headers: Record<string, string> = {}) => {
  const base = await listen(createApp({ settings: settings(changed) }))
  const answer = await fetch(`${base}/manifest.xml`, { headers })
  return { status: answer.status, type: answer.headers.get('content-type'), text: await answer.text() }
}

describe('GET /manifest.xml', () => {
  it('is the add-in’s manifest for the address that users see', async () => {
    const { status, type, text } = await asked({
      behindProxy: true,
      publicUrl: 'https://tests.example:8443',
      tokens: '/nowhere.json',
    })
    expect(status).toBe(200)
    expect(type).toMatch(/^application\/xml/)
    expect(checkXml(text)).toEqual([])
    const addresses = [...text.matchAll(/DefaultValue="(https:[^"]+)"/g)].map(
      ([, address = '']) => new URL(address),
    )
    expect(addresses.length).toBeGreaterThan(12)
    expect(new Set(addresses.map(({ origin }) => origin))).toEqual(new Set(['https://tests.example:8443']))
  })

  it('says what is missing where the service speaks http', async () => {
    const { status, text } = await asked({})
    expect(status).toBe(404)
    expect(JSON.parse(text).detail).toMatch(/draughtbook excel.*--tls-certificate/)
  })

  it('says that there is no pane, where it is not built', async () => {
    const pane = await mkdtemp(join(tmpdir(), 'draughtbook-test-'))
    expect(await asked({ pane, publicUrl: 'https://tests.example' })).toMatchObject({
      status: 404,
      text: expect.stringContaining('not built'),
    })
  })
})
