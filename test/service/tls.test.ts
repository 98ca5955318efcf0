import { readFile, writeFile } from 'node:fs/promises'
import { get } from 'node:https'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { makeToken } from '../../service/src/security/tokens/token'
import { writeTokens } from '../../service/src/security/tokens/token-file'
import { runTool } from '../support/run-tool'
import { folder } from './support/command-line'
import { spawnService } from './support/spawned'

describe('a service on another address', () => {
  it('speaks TLS, tells browsers to stay there, and takes only known callers', async () => {
    const here = await folder()
    const [certificate, key, tokens] = ['c.pem', 'k.pem', 't.json'].map((name) => join(here, name)) as [
      string,
      string,
      string,
    ]
    const subject = ['-subj', '/CN=localhost', '-addext', 'subjectAltName=DNS:localhost']
    await runTool(
      'openssl',
      ['req', '-x509', '-newkey', 'ec', '-pkeyopt', 'ec_paramgen_curve:P-256', '-nodes', '-days', '2']
        .concat(['-keyout', key, '-out', certificate])
        .concat(subject),
      'openssl',
    )
    const { token, stored } = makeToken('office', 1, ['evaluate', 'archive'])
    await writeTokens(tokens, [stored])
    const { base } = await spawnService({
      args: ['--host', '0.0.0.0', '--tls-certificate', certificate, '--tls-key', key, '--tokens', tokens],
    })
    expect(base).toMatch(/^https:\/\/0\.0\.0\.0:\d+$/)
    const ca = await readFile(certificate)
    const ask = (authorization?: string) =>
      new Promise<{ status: number | undefined; hsts: unknown }>((resolve, reject) => {
        const options = { ca, servername: 'localhost', headers: authorization ? { authorization } : {} }
        get(`https://localhost:${new URL(base).port}/v1/methods`, options, (answer) => {
          answer.resume()
          resolve({ status: answer.statusCode, hsts: answer.headers['strict-transport-security'] })
        }).on('error', reject)
      })
    expect(await ask()).toMatchObject({ status: 401 })
    expect(await ask(`Bearer ${token}`)).toEqual({ status: 200, hsts: 'max-age=31536000; includeSubDomains' })
    await writeFile(key, 'no key')
    await expect(
      spawnService({
        args: ['--host', '0.0.0.0', '--tls-certificate', certificate, '--tls-key', key, '--tokens', tokens],
      }),
    ).rejects.toThrow(/ended with 2: .*are not a certificate and its key/)
  }, 180_000)
})
