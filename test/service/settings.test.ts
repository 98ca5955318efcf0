import { describe, expect, it } from 'vitest'
import { settingsFaults } from '../../service/src/settings/check-settings'
import { commandLine, folder } from './support/command-line'
import { settings } from './support/settings'

const proxy = { behindProxy: true, publicUrl: 'https://tests.example', tokens: 'tokens.json' }

describe('the service refuses to start', () => {
  it.each([
    ['on another address without TLS and without access', { host: '0.0.0.0' }, [/TLS|tls/, /--tokens/]],
    [
      'on another address with tokens but without TLS',
      { host: '0.0.0.0', tokens: 't' },
      [/--tls-certificate/],
    ],
    ['on an IPv6 address without TLS', { host: '::', tokens: 't' }, [/--tls-certificate/]],
    ['with TLS but without access', { host: '0.0.0.0', tlsCertificate: 'c', tlsKey: 'k' }, [/--tokens FILE/]],
    ['behind a proxy without access, even on loopback', { ...proxy, tokens: undefined }, [/--tokens FILE/]],
    ['behind a proxy without its public address', { ...proxy, publicUrl: undefined }, [/--public-url/]],
    ['with a certificate but no key', { tlsCertificate: 'c' }, [/go together/]],
    ['with an issuer but no audience', { oidcIssuer: 'https://login.example' }, [/--oidc-audience/]],
    ['with an issuer over plain http', { oidcIssuer: 'http://login.example', oidcAudience: 'a' }, [/https/]],
    ['with an origin that is a whole address', { origins: ['https://pane.example/x'] }, [/--origin/]],
    ['with any origin', { origins: ['*'] }, [/--origin/]],
    ['with no worker', { workers: 0 }, [/workers must be a whole number/]],
    ['with a port that is no number', { port: Number.NaN }, [/port must be a whole number/]],
  ])('%s', (_what, changed, says) => {
    const faults = settingsFaults(settings(changed))
    expect(faults.length).toBe(says.length)
    for (const [i, pattern] of says.entries()) expect(faults[i]).toMatch(pattern)
  })

  it('and says so on the command line with exit code 2', async () => {
    const { code, err } = await commandLine('serve', '--host', '0.0.0.0')
    expect(code).toBe(2)
    expect(err.join('\n')).toMatch(/--tls-certificate/)
    expect(err.join('\n')).toMatch(/--tokens FILE/)
    const key = await commandLine('serve', '--tls-certificate', `${await folder()}/none`, '--tls-key', 'none')
    expect([key.code, key.err[0]]).toEqual([2, expect.stringMatching(/there is no such file/)])
  })
})

describe('the service starts', () => {
  it.each([
    ['on loopback as it comes', {}],
    ['on the IPv6 loopback', { host: '::1' }],
    ['elsewhere with TLS and tokens', { host: '0.0.0.0', tlsCertificate: 'c', tlsKey: 'k', tokens: 't' }],
    ['elsewhere behind a proxy with tokens', { host: '0.0.0.0', ...proxy }],
    [
      'behind a proxy with an issuer',
      { ...proxy, tokens: undefined, oidcIssuer: 'https://login.example', oidcAudience: 'a' },
    ],
  ])('%s', (_what, changed) => {
    expect(settingsFaults(settings(changed))).toEqual([])
  })
})
