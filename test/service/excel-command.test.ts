import { existsSync } from 'node:fs'
import { mkdir, readFile, stat, writeFile } from 'node:fs/promises'
import { get } from 'node:https'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { checkXml } from '../../manifests/src/check-xml'
import { definition } from '../../manifests/src/definition'
import type { Excel } from '../../service/src/excel/excel'
import { removeFromExcel } from '../../service/src/excel/remove'
import { excelOn } from '../../service/src/excel/set-up'
import { trustedCertificate } from '../../service/src/excel/trusted-certificate'
import { commandLine } from './support/command-line'
import { type FakedSystem, fakedSystem } from './support/faked/system'
import { runCommand, spawnService } from './support/spawned'

/** Where Microsoft documents that Excel looks for add-ins of one user. */
const DEVELOPER = 'HKCU\\Software\\Microsoft\\Office\\16.0\\WEF\\Developer'
const WEF = 'Library/Containers/com.microsoft.Excel/Data/Documents/wef'

interface System {
  readonly platform: 'win32' | 'darwin'
  readonly folder: string
  /** Path of the manifest that Excel would read; undefined when it would read none. */
  readonly registered: (system: FakedSystem) => Promise<string | undefined>
}

const systems: readonly System[] = [
  {
    platform: 'win32',
    folder: 'AppData/Local/Draughtbook',
    registered: async (system) => (await system.state()).registry[`${DEVELOPER}\\${definition.id}`],
  },
  {
    platform: 'darwin',
    folder: 'Library/Application Support/Draughtbook',
    registered: async ({ home }) => {
      const path = join(home, WEF, 'draughtbook.xml')
      return existsSync(path) ? path : undefined
    },
  },
]

/** Excel has been opened by this user before. */
const withExcel = async (platform: 'win32' | 'darwin') => {
  const system = await fakedSystem(platform)
  await mkdir(join(system.home, WEF, '..'), { recursive: true })
  return system
}

const READY = /keep this window open/

/** Runs `draughtbook excel` until it has set up everything. */
async function setUp(system: FakedSystem, ...args: string[]) {
  const service = await spawnService({ command: 'excel', args: ['--yes', ...args], env: system.env })
  await service.says(READY)
  return service
}

/** The answer to a request that trusts one certificate alone. */
const fetched = (url: string, ca: Buffer) =>
  new Promise<{ status: number | undefined; text: string; hsts: unknown }>((resolve, reject) => {
    get(url, { ca, agent: false }, (answer) => {
      let text = ''
      answer.on('data', (chunk) => {
        text += chunk
      })
      answer.on('end', () =>
        resolve({ status: answer.statusCode, text, hsts: answer.headers['strict-transport-security'] }),
      )
    }).on('error', reject)
  })

describe.each(systems)('draughtbook excel on $platform', ({ platform, folder, registered }) => {
  it('trusts a certificate for localhost for this user, serves the pane over https, registers the add-in and opens Excel; --remove undoes it in three lines', async () => {
    const system = await withExcel(platform)
    const service = await setUp(system)
    const { port } = new URL(service.base)
    const own = join(system.home, folder)
    const ca = await readFile(join(own, 'localhost.crt'))
    const state = await system.state()
    expect(state.trusted).toHaveLength(1)
    expect(state.opened).toBe(1)
    expect((await stat(join(own, 'localhost.key'))).mode & 0o077).toBe(0)

    const path = await registered(system)
    const manifest = await readFile(path ?? '', 'utf8')
    expect(checkXml(manifest)).toEqual([])
    expect(manifest).toContain(`https://localhost:${port}/pane.html`)
    expect(manifest).not.toContain('draughtbook.invalid')
    // The manifest's addresses answer over TLS, with a certificate that needs no trust but its own.
    const page = await fetched(`https://localhost:${port}/pane.html`, ca)
    expect(page).toMatchObject({ status: 200, hsts: undefined })
    expect(page.text).toContain('office.js')
    expect(await fetched(`https://localhost:${port}/manifest.xml`, ca)).toMatchObject({ text: manifest })

    service.child.kill('SIGTERM')
    expect(await service.ended).toBe(0)
    const served = await spawnService({ args: ['--excel'], env: system.env })
    const again = `https://localhost:${new URL(served.base).port}/healthz`
    expect(await fetched(again, ca)).toMatchObject({ status: 200 })
    const removal = await runCommand(['excel', '--remove'], undefined, system.env)
    expect(removal.code).toBe(0)
    expect(removal.err.trim().split('\n')).toEqual([
      expect.stringMatching(/^The add-in is no longer registered in Excel \(.*\)\.$/),
      'The certificate for localhost is no longer trusted.',
      `Certificate, key and manifest are deleted (${own}).`,
    ])
    expect(await system.state()).toMatchObject({ trusted: [], registry: {} })
    expect(await registered(system)).toBeUndefined()
    expect(existsSync(own)).toBe(false)
    expect(await system.calls()).not.toMatch(/sudo|HKLM|System\.keychain|proxy/i)
  })

  it('keeps its certificate for the next day, and asks nothing then', async () => {
    const { machine, state } = await withExcel(platform)
    const excel = excelOn(machine) as Excel
    const made = await trustedCertificate(excel, async () => true)
    const before = await state()
    expect(await trustedCertificate(excel, () => expect.unreachable('asked'))).toEqual(made)
    expect(await state()).toEqual(before)
  })

  it('changes nothing when the person does not agree', async () => {
    const { home, machine, calls } = await withExcel(platform)
    expect(await trustedCertificate(excelOn(machine) as Excel, async () => false)).toBeUndefined()
    expect(existsSync(join(home, folder))).toBe(false)
    expect(await calls()).toBe('')
  })

  it('says what stays when the system does not let go of the certificate, and removes it the next time', async () => {
    const { machine, refuse } = await withExcel(platform)
    const excel = excelOn(machine) as Excel
    await trustedCertificate(excel, async () => true)
    await refuse(true)
    const kept = await removeFromExcel(excel)
    expect(kept.whole).toBe(false)
    expect(kept.lines).toEqual([
      expect.stringMatching(/^The add-in was not registered/),
      'The certificate for localhost is still trusted: The operation was cancelled by the user.',
      expect.stringMatching(/stays until the rest is removed/),
    ])
    await refuse(false)
    expect(await removeFromExcel(excel)).toMatchObject({ whole: true })
  })

  it('replaces a certificate that does not match its key, and ends the trust in the old one', async () => {
    const { home, machine, state } = await withExcel(platform)
    const excel = excelOn(machine) as Excel
    const old = await trustedCertificate(excel, async () => true)
    await writeFile(join(home, folder, 'localhost.key'), 'damaged')
    const fresh = await trustedCertificate(excel, async () => true)
    expect(fresh?.fingerprint).not.toBe(old?.fingerprint)
    expect((await state()).trusted).toEqual([fresh?.fingerprint])
  })
})

describe('draughtbook excel', () => {
  it('asks a Mac user to open Excel once, where it never was', async () => {
    const system = await fakedSystem('darwin')
    const { code, err } = await runCommand(['excel', '--yes'], undefined, system.env)
    expect({ code, err }).toEqual({ code: 2, err: expect.stringContaining('Open Excel once') })
    expect(existsSync(join(system.home, 'Library'))).toBe(false)
  })

  it('asks first, on a terminal, unless told that it may', async () => {
    const { home, env, calls } = await withExcel('win32')
    const { code, err } = await runCommand(['excel'], undefined, env)
    expect({ code, err }).toEqual({ code: 2, err: expect.stringMatching(/you must agree.*--yes/) })
    expect(existsSync(join(home, 'AppData'))).toBe(false)
    expect(await calls()).toBe('')
  })

  it('explains on a system without Excel, and stops', async () => {
    for (const args of [['excel'], ['excel', '--remove']]) {
      const { code, err } = await commandLine(...args)
      expect({ code, err }).toEqual({
        code: 2,
        err: [expect.stringMatching(/Excel does not run on this system.*serve/)],
      })
    }
    expect((await commandLine('serve', '--excel')).err).toEqual([
      expect.stringMatching(/--excel: Excel does not run/),
    ])
  })
})
