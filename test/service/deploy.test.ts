import { existsSync } from 'node:fs'
import { readFile } from 'node:fs/promises'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { Command } from 'commander'
import { describe, expect, it } from 'vitest'
import { addServeOptions } from '../../service/src/cli/serve.js'
import { runTool } from '../support/run-tool'

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
