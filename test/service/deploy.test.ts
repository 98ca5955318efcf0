import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { existsSync } from 'node:fs'
import { readFile } from 'node:fs/promises'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { Command } from 'commander'
import { describe, expect, it } from 'vitest'
import { addServeOptions } from '../../service/src/cli/serve.js'
import { runTool } from '../support/run-tool'
import { selfSigned } from './support/self-signed'
import { spawnService } from './support/spawned'

const ROOT = fileURLToPath(new URL('../../', import.meta.url))
const read = (path: string) => readFile(join(ROOT, path), 'utf8')

const known = new Set(addServeOptions(new Command()).options.map(({ envVar }) => envVar))

describe('the container file', () => {
  it('copies only what is there, or what the build before makes', async () => {
    const lines = (await read('service/deploy/Containerfile'))
      .split('\n')
      .filter((line) => line.startsWith('COPY'))
    expect(lines.length).toBeGreaterThan(10)
    for (const line of lines) {
      const words = line.split(' ').slice(1)
      const sources = words.filter((word) => !word.startsWith('--')).slice(0, -1)
      for (const source of sources) {
        const path = source.replace(/^\/build\//, '')
        const made = /(^|\/)(dist|node_modules)$/.test(path)
        expect(made || existsSync(join(ROOT, path)), line).toBe(true)
      }
    }
  })

  it('sets only settings there are, runs as no root, and hands signals to the service itself', async () => {
    const text = await read('service/deploy/Containerfile')
    const names = [...text.matchAll(/\b(DRAUGHTBOOK_[A-Z_]+)\b/g)].map(([, name]) => name)
    expect(names.filter((name) => !known.has(name))).toEqual([])
    expect(text).toMatch(/^USER node$/m)
    expect(text).toMatch(/^ENTRYPOINT \["node", "service\/bin\/draughtbook\.mjs"\]$/m)
    expect(existsSync(join(ROOT, 'service/bin/draughtbook.mjs'))).toBe(true)
  })
})

describe('the health check of the container', () => {
  it.each([
    ['without TLS', async () => ({})],
    ['with TLS', selfSigned],
  ] as [string, () => Promise<{ certificate?: string; keyFile?: string }>][])(
    'finds a service alive %s, and one that has gone dead',
    async (_what, files) => {
      const [, command = '[]'] =
        /^HEALTHCHECK .* CMD (\[.*\])$/m.exec(await read('service/deploy/Containerfile')) ?? []
      const [, ...args] = JSON.parse(command) as string[]
      const { certificate = '', keyFile = '' } = await files()
      const tls = certificate ? ['--tls-certificate', certificate, '--tls-key', keyFile] : []
      const { base, child, ended } = await spawnService({ args: tls })
      const { port } = new URL(base)
      const env = {
        ...process.env,
        DRAUGHTBOOK_PORT: port,
        ...(certificate && { DRAUGHTBOOK_TLS_CERTIFICATE: certificate }),
      }
      const check = async () => (await once(spawn(process.execPath, args, { env }), 'exit'))[0]
      expect(await check()).toBe(0)
      child.kill('SIGKILL')
      await ended
      expect(await check()).toBe(1)
    },
  )
})

describe('the guide', () => {
  it('links to files that are there, in the clone and in the package', async () => {
    const links = [...(await read('service/deploy/README.md')).matchAll(/\]\(([^):]+)\)/g)].map(
      ([, to]) => to,
    )
    expect(links.length).toBeGreaterThan(1)
    const packed = await read('service/pack.mjs')
    for (const to of links) {
      expect(existsSync(join(ROOT, 'service/deploy', to ?? ''))).toBe(true)
      expect(packed).toContain(`'${to}': `)
    }
  })

  it('has settings for nginx that it loads, wait longer than a file may take, and keep nothing of what passes', async () => {
    const [, nginx = ''] = /```nginx\n(server[\s\S]*?)```/.exec(await read('service/deploy/README.md')) ?? []
    // Without these nginx refuses `listen … ssl` (ngx_http_ssl_module).
    expect(nginx).toMatch(/^\s*ssl_certificate\s/m)
    expect(nginx).toMatch(/^\s*ssl_certificate_key\s/m)
    expect(Number(/proxy_read_timeout (\d+)s;/.exec(nginx)?.[1])).toBeGreaterThan(60)
    expect(nginx).toMatch(/proxy_request_buffering off;/)
  })
})

describe('the systemd unit', () => {
  it('is accepted by systemd, and sets only settings there are', async () => {
    const unit = join(ROOT, 'service/deploy/draughtbook.service')
    expect(await runTool('systemd-analyze', ['verify', '--man=no', unit], 'systemd')).not.toMatch(
      /draughtbook/,
    )
    const names = `${await read('service/deploy/draughtbook.service')}\n${await read('service/deploy/service.env')}`
    const set = [...names.matchAll(/^(?:Environment=)?(DRAUGHTBOOK_[A-Z_]+)=/gm)].map(([, name]) => name)
    expect(set.length).toBeGreaterThan(5)
    expect(set.filter((name) => !known.has(name))).toEqual([])
  })
})
