import { request } from 'node:http'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { createApp } from '../../service/src/app'
import { writeTokens } from '../../service/src/security/tokens/token-file'
import { folder } from './support/command-line'
import { listen } from './support/listen'
import { settings } from './support/settings'

const PANE = 'https://pane.example'

describe('pages of other origins', () => {
  it('are refused, whatever they send', async () => {
    const base = await listen(createApp())
    for (const origin of ['https://evil.example', 'null', PANE, 'http://127.0.0.1:1'])
      for (const method of ['GET', 'POST', 'OPTIONS'] as const) {
        const answer = await fetch(`${base}/v1/evaluations`, { method, headers: { origin } })
        expect(answer.status).toBe(403)
        expect(answer.headers.get('access-control-allow-origin')).toBeNull()
      }
  })

  it('are let in when listed, and only those', async () => {
    const base = await listen(createApp({ settings: settings({ origins: [PANE] }) }))
    const asked = await fetch(`${base}/v1/evaluations`, {
      method: 'OPTIONS',
      headers: {
        origin: PANE,
        'access-control-request-method': 'POST',
        'access-control-request-headers': 'authorization,content-type',
      },
    })
    expect(asked.status).toBe(204)
    expect(asked.headers.get('access-control-allow-origin')).toBe(PANE)
    expect(asked.headers.get('access-control-allow-headers')).toMatch(/Authorization/)
    expect(asked.headers.get('access-control-allow-credentials')).toBeNull()
    expect(asked.headers.get('vary')).toMatch(/Origin/)
    const answer = await fetch(`${base}/v1/methods`, { headers: { origin: PANE } })
    expect([answer.status, answer.headers.get('access-control-allow-origin')]).toEqual([200, PANE])
    expect((await fetch(`${base}/v1/methods`, { headers: { origin: `${PANE}.evil.example` } })).status).toBe(
      403,
    )
  })

  it('may be the service’s own', async () => {
    const base = await listen(createApp())
    expect((await fetch(`${base}/v1/methods`, { headers: { origin: base } })).status).toBe(200)
  })
})

/** Sends a request with a host name of its own; fetch does not allow that. */
const statusFor = (base: string, host: string) =>
  new Promise<number | undefined>((resolve, reject) => {
    request(`${base}/v1/methods`, { headers: { host } }, (answer) => {
      answer.resume()
      resolve(answer.statusCode)
    })
      .on('error', reject)
      .end()
  })

describe('a name that points here from elsewhere', () => {
  it('is not answered where the service is open to this machine', async () => {
    const base = await listen(createApp())
    expect(await statusFor(base, 'evil.example')).toBe(421)
    expect(await statusFor(base, 'localhost.evil.example:8460')).toBe(421)
    expect(await statusFor(base, '127.0.0.1.evil.example')).toBe(421)
    expect(await statusFor(base, 'localhost:8460')).toBe(200)
    expect(await statusFor(base, '[::1]:8460')).toBe(200)
  })

  it('is answered where callers must say who they are', async () => {
    const tokens = join(await folder(), 'tokens.json')
    await writeTokens(tokens, [])
    const base = await listen(createApp({ settings: settings({ tokens }) }))
    expect(await statusFor(base, 'service.firm.example')).toBe(401)
  })
})
