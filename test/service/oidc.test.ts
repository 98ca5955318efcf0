import { createServer } from 'node:http'
import type { AddressInfo } from 'node:net'
import { exportJWK, generateKeyPair, SignJWT } from 'jose'
import { describe, expect, it, onTestFinished } from 'vitest'
import { createApp } from '../../service/src/app'
import { listen } from './support/listen'
import { settings } from './support/settings'

const AUDIENCE = 'draughtbook'

/** An identity provider on loopback with one key, as OpenID Connect Discovery 1.0 describes it. */
async function issuer() {
  const { publicKey, privateKey } = await generateKeyPair('ES256', { extractable: true })
  const jwk = { ...(await exportJWK(publicKey)), kid: 'one', alg: 'ES256', use: 'sig' }
  const asked: string[] = []
  const server = createServer((request, response) => {
    asked.push(request.url ?? '')
    response.setHeader('content-type', 'application/json')
    const body =
      request.url === '/.well-known/openid-configuration'
        ? { issuer: url, jwks_uri: `${url}/keys` }
        : { keys: [jwk] }
    response.end(JSON.stringify(body))
  })
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve))
  const url = `http://127.0.0.1:${(server.address() as AddressInfo).port}`
  const close = () => {
    server.closeAllConnections()
    server.close()
  }
  onTestFinished(close)
  const token = (claims: Record<string, unknown> = {}, key = privateKey, alg = 'ES256') =>
    new SignJWT({
      iss: url,
      aud: AUDIENCE,
      sub: 'user-17',
      exp: Math.floor(Date.now() / 1000) + 60,
      ...claims,
    })
      .setProtectedHeader({ alg, kid: 'one' })
      .sign(key)
  return { url, token, close, asked }
}

async function service(oidcIssuer: string) {
  const base = await listen(createApp({ settings: settings({ oidcIssuer, oidcAudience: AUDIENCE }) }))
  return async (token: string) =>
    (await fetch(`${base}/v1/methods`, { headers: { authorization: `Bearer ${token}` } })).status
}

describe('an OpenID Connect issuer', () => {
  it('opens the door to tokens it made for this service', async () => {
    const { url, token } = await issuer()
    const ask = await service(url)
    expect(await ask(await token())).toBe(200)
    expect(await ask(await token({ aud: ['other', AUDIENCE] }))).toBe(200)
  })

  it.each([
    ['for another audience', { aud: 'another-service' }],
    ['for no audience', { aud: undefined }],
    ['by another issuer', { iss: 'https://login.example' }],
    ['that has expired', { exp: Math.floor(Date.now() / 1000) - 120 }],
    ['that never expires', { exp: undefined }],
    ['for nobody', { sub: undefined }],
    ['that is not valid yet', { nbf: Math.floor(Date.now() / 1000) + 3600 }],
  ])('does not open it to a token %s', async (_what, claims) => {
    const { url, token } = await issuer()
    const ask = await service(url)
    expect(await ask(await token(claims))).toBe(401)
  })

  it('does not open it to tokens of another key, of a shared secret or unsigned', async () => {
    const { url, token } = await issuer()
    const ask = await service(url)
    const other = await generateKeyPair('ES256')
    expect(await ask(await token({}, other.privateKey))).toBe(401)
    const good = await token()
    const [, payload, signature = ''] = good.split('.')
    const header = (value: object) => Buffer.from(JSON.stringify(value)).toString('base64url')
    expect(await ask(`${header({ alg: 'none' })}.${payload}.`)).toBe(401)
    expect(await ask(`${header({ alg: 'HS256', kid: 'one' })}.${payload}.${signature}`)).toBe(401)
    const altered = Buffer.from(payload ?? '', 'base64url')
      .toString()
      .replace('user-17', 'user-18')
    expect(
      await ask(`${good.split('.')[0]}.${Buffer.from(altered).toString('base64url')}.${signature}`),
    ).toBe(401)
  })

  it('lets nobody in while it cannot be reached, and says so', async () => {
    const { url, token, close } = await issuer()
    const good = await token()
    close()
    const ask = await service(url)
    expect(await ask(good)).toBe(503)
  })

  it('keeps nobody out whose key is known while it is out, whatever others send', async () => {
    const { url, token, close } = await issuer()
    const ask = await service(url)
    const good = await token()
    expect(await ask(good)).toBe(200)
    close()
    const stranger = await generateKeyPair('ES256')
    const unknown = await new SignJWT({
      iss: url,
      aud: AUDIENCE,
      sub: 'x',
      exp: Math.floor(Date.now() / 1000) + 60,
    })
      .setProtectedHeader({ alg: 'ES256', kid: 'another' })
      .sign(stranger.privateKey)
    for (let i = 0; i < 5; i++) {
      expect(await ask(unknown)).not.toBe(200)
      expect(await ask(good)).toBe(200)
    }
  })

  it('is asked for its keys once, however many callers come', async () => {
    const { url, token, asked } = await issuer()
    const ask = await service(url)
    const good = await token()
    expect(await ask(good)).toBe(200)
    for (let i = 0; i < 10; i++) expect(await ask(good)).toBe(200)
    expect(asked.filter((path) => path === '/keys').length).toBe(1)
  })
})
