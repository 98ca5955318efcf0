import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { mkdir, readdir, readFile, rm, stat, utimes, writeFile } from 'node:fs/promises'
import { request } from 'node:http'
import { connect } from 'node:net'
import { hostname } from 'node:os'
import { join } from 'node:path'
import { describe, expect, it, onTestFinished, vi } from 'vitest'
import { startSweeping } from '../../service/src/archive/upload-folders'
import { requireBuild } from './support/built'
import { folder } from './support/command-line'
import { type Spawned, spawnService } from './support/spawned'

const LOG = new URL('../../service/dist/seen/log.js', import.meta.url).href
const BOUNDARY = 'a-boundary'
const HEAD = `POST /v1/registers HTTP/1.1\r\nhost: localhost\r\ncontent-type: multipart/form-data; boundary=${BOUNDARY}\r\ntransfer-encoding: chunked\r\n\r\n`
const PART = `--${BOUNDARY}\r\ncontent-disposition: form-data; name="files"; filename="log.csv"\r\ncontent-type: text/csv\r\n\r\na,b\n1,2\n`

/** Begins an upload and does not end it. */
function beginUpload({ base }: Spawned) {
  const sent = request(`${base}/v1/registers?asOf=2026-10-31`, {
    method: 'POST',
    headers: { 'content-type': `multipart/form-data; boundary=${BOUNDARY}` },
  })
  onTestFinished(() => void sent.destroy())
  sent.on('error', () => undefined)
  sent.write(PART)
  return sent
}

/** The folders of requests below those of services. */
async function requestsIn(disk: string): Promise<string[]> {
  const own = (await readdir(disk)).filter((name) => name.startsWith('draughtbook-'))
  return (await Promise.all(own.map((name) => readdir(join(disk, name)).catch(() => [])))).flat()
}

const uploading = async (disk: string, service: Spawned) => {
  const sent = beginUpload(service)
  await expect.poll(() => requestsIn(disk), { timeout: 30_000 }).toHaveLength(1)
  return sent
}

describe('files of an upload', () => {
  it('are removed when their sender goes, also while their folder is being made', async () => {
    const disk = await folder()
    const service = await spawnService({ env: { TMPDIR: disk } })
    const sent = await uploading(disk, service)
    sent.destroy()
    const hasty = Array.from({ length: 60 }, () => {
      const socket = connect(Number(new URL(service.base).port), '127.0.0.1')
      socket.on('error', () => undefined)
      socket.resume().end(HEAD)
      return once(socket, 'close')
    })
    await Promise.all(hasty)
    // Once the last has its file, the folders of those before have been made too.
    const last = beginUpload(service)
    const files = async () =>
      (await readdir(disk, { recursive: true, withFileTypes: true })).filter((one) => one.isFile())
    await expect.poll(files, { timeout: 30_000 }).toHaveLength(1)
    last.destroy()
    await expect.poll(() => requestsIn(disk), { timeout: 30_000 }).toEqual([])
  })

  it('of a service that was killed are removed by the next one', async () => {
    const disk = await folder()
    const killed = await spawnService({ env: { TMPDIR: disk } })
    await uploading(disk, killed)
    killed.child.kill('SIGKILL')
    await killed.ended
    expect(await requestsIn(disk)).toHaveLength(1)
    await spawnService({ env: { TMPDIR: disk } })
    await expect.poll(() => requestsIn(disk), { timeout: 30_000 }).toEqual([])
  })

  it('that cannot be kept are refused with a sentence', async () => {
    const disk = await folder()
    const first = `mount -t tmpfs -o ro tmpfs '${disk}'`
    const { base } = await spawnService({ env: { TMPDIR: disk }, first })
    const body = new FormData()
    body.append('files', new Blob(['a,b\n1,2\n']), 'log.csv')
    const answer = await fetch(`${base}/v1/registers?asOf=2026-10-31`, { method: 'POST', body })
    expect(answer.status).toBe(503)
    expect(await answer.json()).toMatchObject({
      type: '/api#upload-storage',
      detail: 'the folder for uploads (TMPDIR) cannot be written: the disk is read-only',
    })
  })

  it('that cannot be removed do not end the service, which says where they stay', async () => {
    const disk = await folder()
    // The disk becomes read-only once the folder of the request is there, as one does that has an error; not while a file is written.
    const waits = `for i in $(seq 6000); do ls -d '${disk}'/*/request-* && mount -o remount,ro '${disk}' && break; sleep 0.05; done`
    const first = `mount -t tmpfs tmpfs '${disk}' && { (${waits}) >/dev/null 2>&1 & true; }`
    const { base, says } = await spawnService({ env: { TMPDIR: disk }, first })
    const sent = request(`${base}/v1/registers?asOf=2026-10-31`, {
      method: 'POST',
      headers: { 'content-type': `multipart/form-data; boundary=${BOUNDARY}` },
    })
    onTestFinished(() => void sent.destroy())
    sent.on('error', () => undefined)
    sent.write('\r\n')
    const status = async () => {
      const body = new FormData()
      body.append('files', new Blob(['a,b\n1,2\n']), 'log.csv')
      return (await fetch(`${base}/v1/registers?asOf=2026-10-31`, { method: 'POST', body })).status
    }
    await expect.poll(status, { timeout: 240_000 }).toBe(503)
    sent.destroy()
    await says(/uploaded files stay in .*request-\w+ until the service ends: the disk is read-only/)
    expect((await fetch(`${base}/healthz`)).status).toBe(200)
  })

  it('have a place again after the folder of the service was tidied away', async () => {
    const disk = await folder()
    const service = await spawnService({ env: { TMPDIR: disk } })
    for (const name of await readdir(disk)) await rm(join(disk, name), { recursive: true })
    await uploading(disk, service)
  })

  it('that are more than the disk can take are refused with a sentence', async () => {
    const disk = await folder()
    const first = `mount -t tmpfs -o size=256k tmpfs '${disk}'`
    const { base } = await spawnService({ env: { TMPDIR: disk }, first })
    const body = new FormData()
    body.append('files', new Blob([new Uint8Array(1024 * 1024)]), 'log.csv')
    const answer = await fetch(`${base}/v1/registers?asOf=2026-10-31`, { method: 'POST', body })
    expect(answer.status).toBe(507)
    expect(await answer.json()).toMatchObject({
      detail: 'the folder for uploads (TMPDIR) cannot be written: the disk is full',
    })
  })
})

describe('folders of uploads', () => {
  it('are removed where their service has gone, and left alone where it lives, suspended or with another clock', async () => {
    const disk = await folder()
    vi.stubEnv('TMPDIR', disk)
    onTestFinished(() => void vi.unstubAllEnvs())
    const here = hostname().replace(/[^\w.-]/g, '_')
    const ended = spawn(process.execPath, ['-e', ''])
    await once(ended, 'exit')
    const make = async (name: string, hours: number) => {
      const path = join(disk, name)
      await mkdir(path)
      const then = new Date(Date.now() - hours * 3_600_000)
      await utimes(path, then, then)
    }
    const living = `draughtbook-uploads-${here}-${process.ppid}-living`
    const elsewhere = 'draughtbook-uploads-elsewhere-7-fresh1'
    await make(living, 2)
    await make(elsewhere, 0)
    await make('somebody-elses-folder', 1000)
    await make(`draughtbook-uploads-${here}-${ended.pid}-killed`, 0)
    await make(`draughtbook-uploads-${here}-${process.ppid}-reused`, 48)
    await make('draughtbook-uploads-elsewhere-7-silent', 2)
    const sweeping = await startSweeping()
    await sweeping.end()
    expect((await readdir(disk)).sort()).toEqual([living, elsewhere, 'somebody-elses-folder'].sort())
  })
})

describe('a service that runs', () => {
  it('goes on removing what others left, and shows that its own folder is in use', async () => {
    const disk = await folder()
    vi.stubEnv('TMPDIR', disk)
    vi.useFakeTimers({ toFake: ['setInterval', 'clearInterval'] })
    onTestFinished(() => {
      vi.unstubAllEnvs()
      vi.useRealTimers()
    })
    const sweeping = await startSweeping()
    onTestFinished(() => sweeping.end())
    const [own = ''] = await readdir(disk)
    const long = new Date('2026-01-01')
    await utimes(join(disk, own), long, long)
    const ended = spawn(process.execPath, ['-e', ''])
    await once(ended, 'exit')
    await mkdir(join(disk, `draughtbook-uploads-${hostname().replace(/[^\w.-]/g, '_')}-${ended.pid}-killed`))
    vi.advanceTimersByTime(60_000)
    await expect.poll(() => readdir(disk)).toEqual([own])
    expect((await stat(join(disk, own))).mtime.getTime()).toBeGreaterThan(long.getTime())
  })
})

describe('a log that cannot be written', () => {
  it('because nobody reads it is given up, with the reason, once very much is waiting', async () => {
    await requireBuild()
    const script = `import { standardOutput } from '${LOG}'
      const out = standardOutput((why) => { process.stderr.write(why); process.exit() }, 300_000)
      setInterval(() => out.write('x'.repeat(20_000) + '\\n'), 60)`
    const file = join(await folder(), 'unread.mjs')
    await writeFile(file, script)
    const child = spawn(process.execPath, [file], { stdio: ['ignore', 'pipe', 'pipe'] })
    onTestFinished(() => void child.kill('SIGKILL'))
    // Its standard output is a pipe that nobody empties.
    const [why] = (await once(child.stderr, 'data')) as [Buffer]
    expect(why.toString()).toBe('nothing reads it, and too much is waiting')
  })

  it('ends the service with a sentence and an exit code of its own', async () => {
    const disk = join(await folder(), 'disk')
    await mkdir(disk)
    const first = `mount -t tmpfs -o size=8k tmpfs '${disk}' && exec >'${disk}/log'`
    const { base, ended, text } = await spawnService({ first })
    const asked = async () => {
      await fetch(`${base}/healthz`)
      return true
    }
    // Calls until the disk is full; then there is nobody to answer.
    while (await asked().catch(() => false));
    expect(await ended).toBe(74)
    expect(text()).toMatch(/the log cannot be written \(the disk is full\), so the service ends/)
  })
})

it('every exit code of the service is listed where it is told how to run it', async () => {
  const page = await readFile('service/deploy/README.md', 'utf8')
  for (const code of ['0', '2', '3', '74', '130']) expect(page).toMatch(new RegExp(`^\\| ${code} \\|`, 'm'))
})
