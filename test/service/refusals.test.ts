import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { createApp } from '../../service/src/app'
import { makeToken } from '../../service/src/security/tokens/token'
import { writeTokens } from '../../service/src/security/tokens/token-file'
import type { Settings } from '../../service/src/settings/settings'
import { folder } from './support/command-line'
import { listen } from './support/listen'
import { settings } from './support/settings'

async function serving(changed: Partial<Settings> = {}) {
  const { token, stored } = makeToken('office', 1, ['evaluate', 'archive'])
  const tokens = join(await folder(), 'tokens.json')
  await writeTokens(tokens, [stored])
  const base = await listen(createApp({ settings: settings({ tokens, rate: 0, ...changed }) }))
  const ask = (bearer: string, more: { signal?: AbortSignal; headers?: Record<string, string> } = {}) =>
    fetch(`${base}/v1/methods`, { ...more, headers: { authorization: `Bearer ${bearer}`, ...more.headers } })
  return { ask, token }
}

describe('a request that is given up', () => {
  it('does not count as a wrong token, however many there are', async () => {
    const { ask, token } = await serving()
    for (let i = 0; i < 45; i++) {
      const gone = new AbortController()
      const asked = ask(token, { signal: gone.signal }).catch(() => undefined)
      setImmediate(() => gone.abort())
      await asked
    }
    const together = await Promise.all(Array.from({ length: 45 }, () => ask(token)))
    expect(new Set(together.map(({ status }) => status))).toEqual(new Set([200]))
  })
})

describe('wrong tokens', () => {
  it('shut their sender out, not whoever has a good one at the same address', async () => {
    const { ask, token } = await serving()
    const statuses: number[] = []
    for (let i = 0; i < 35; i++) statuses.push((await ask('guess')).status)
    expect(statuses).toEqual([...Array(30).fill(401), ...Array(5).fill(429)])
    expect((await ask(token)).status).toBe(200)
  })

  it.each([
    ['believed', ['loopback'], 401],
    ['not believed', ['192.0.2.1'], 429],
  ])('are told apart by what a proxy says of their address where it is %s', async (_how, proxies, last) => {
    const { ask } = await serving({ behindProxy: true, proxies, publicUrl: 'https://pane.example' })
    const from = (address: string) => ask('guess', { headers: { 'x-forwarded-for': address } })
    for (let i = 0; i < 30; i++) await from('198.51.100.7')
    expect((await from('198.51.100.8')).status).toBe(last)
  })
})
