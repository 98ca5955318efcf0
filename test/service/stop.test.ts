import { once } from 'node:events'
import { readdir, writeFile } from 'node:fs/promises'
import { request } from 'node:http'
import { connect } from 'node:net'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { describe, expect, it, onTestFinished } from 'vitest'
import { folder } from './support/command-line'
import { postJson } from './support/listen'
import { demoRecord } from './support/record'
import { spawnService } from './support/spawned'

const RECORD = JSON.stringify(demoRecord())

const STANDS_STILL = fileURLToPath(new URL('support/stands-still.mjs', import.meta.url))
const HELD = fileURLToPath(new URL('support/held-threads.mjs', import.meta.url))

describe('a service told to stop', () => {
  it('finishes what it began, under load, loses no answer and ends with 0', async () => {
    const disk = await folder()
    const { base, child, ended, text } = await spawnService({
      args: ['--drain', '3', '--queue', '200'],
      env: { TMPDIR: disk },
    })
    const asked = Array.from({ length: 30 }, (_, i) =>
      postJson(`${base}/v1/${i % 2 ? 'workbooks' : 'evaluations'}`, RECORD).then(async (answer) => ({
        status: answer.status,
        bytes: (await answer.arrayBuffer()).byteLength,
      })),
    )
    // All are under way once the first is answered.
    await Promise.any(asked)
    child.kill('SIGTERM')
    await expect.poll(async () => (await fetch(`${base}/readyz`)).status).toBe(503)
    const health = await fetch(`${base}/healthz`)
    expect(health.status).toBe(200)
    // Whoever keeps connections open must not send the next request on this one.
    expect(health.headers.get('connection')).toBe('close')
    const answers = await Promise.all(asked)
    expect(answers.map(({ status }) => status)).toEqual(Array(30).fill(200))
    expect(Math.min(...answers.map(({ bytes }) => bytes))).toBeGreaterThan(1000)
    expect(await ended).toBe(0)
    expect(text()).toMatch(/SIGTERM, finishing running requests[\s\S]*stopped/)
    expect(text().match(/"audit":true/g)?.length).toBeGreaterThanOrEqual(30)
    await expect(fetch(`${base}/healthz`)).rejects.toThrow()
    expect(await readdir(disk)).toEqual([])
  })

  it('twice, in whichever way, ends at once and leaves nothing of an upload', async () => {
    const disk = await folder()
    const { base, child, ended, says } = await spawnService({ env: { TMPDIR: disk } })
    const sent = request(`${base}/v1/registers`, {
      method: 'POST',
      headers: { 'content-type': 'multipart/form-data; boundary=b' },
    })
    onTestFinished(() => void sent.destroy())
    sent.on('error', () => undefined)
    sent.write('--b\r\ncontent-disposition: form-data; name="files"; filename="a.csv"\r\n\r\na,b')
    const files = async () => (await readdir(disk, { recursive: true })).length
    // The folder of the service, that of the request, and the file.
    await expect.poll(files, { timeout: 30_000 }).toBe(3)
    child.kill('SIGTERM')
    await says(/SIGTERM, finishing running requests/)
    child.kill('SIGINT')
    expect(await ended).toBe(130)
    expect(await files()).toBe(0)
  })

  it('does not wait for idle connections, nor longer than allowed for others', async () => {
    const { base, child, ended, text } = await spawnService({ args: ['--grace', '1'] })
    await fetch(`${base}/healthz`)
    const socket = connect(Number(new URL(base).port), '127.0.0.1')
    socket.on('error', () => undefined)
    socket.write('POST /v1/evaluations HTTP/1.1\r\nhost: localhost\r\ncontent-length: 100\r\n\r\n')
    await new Promise((resolve) => setTimeout(resolve, 100))
    // As where its terminal is closed.
    child.kill('SIGHUP')
    // 3: something was not finished (service/deploy/README.md).
    expect(await ended).toBe(3)
    expect(text()).toMatch(/some requests were not finished within 1 s[\s\S]*stopped/)
  })

  it('ends within what is allowed while its threads are busy', async () => {
    const { base, child, ended } = await spawnService({ args: ['--grace', '1', '--workers', '1'] })
    const asked = Array.from({ length: 60 }, () =>
      postJson(`${base}/v1/workbooks`, RECORD).catch(() => undefined),
    )
    await Promise.race(asked)
    child.kill('SIGTERM')
    expect(await ended).toBe(3)
    await Promise.all(asked)
  })

  it('answers that it lives before any thread has begun, and says what it waits for until it is ready', async () => {
    const begin = join(await folder(), 'begin')
    const env = { NODE_OPTIONS: `--import ${HELD}`, HELD_UNTIL: begin }
    const { base, says } = await spawnService({ env })
    await says(
      /starting; waiting for the code for small requests, a thread that evaluates and a thread that writes workbooks/,
    )
    expect((await fetch(`${base}/healthz`)).status).toBe(200)
    const waitsFor = async () => (await (await fetch(`${base}/readyz`)).json()) as { waitingFor: string[] }
    await expect.poll(waitsFor, { timeout: 50_000 }).toEqual({
      status: 'starting',
      waitingFor: ['a thread that evaluates', 'a thread that writes workbooks'],
    })
    await writeFile(begin, '')
    await says(/^draughtbook: ready$/m)
    expect((await fetch(`${base}/readyz`)).status).toBe(200)
  })

  it('is ended by its watchdog where it stands still meanwhile', async () => {
    const env = { NODE_OPTIONS: `--import ${STANDS_STILL}` }
    const { child, text } = await spawnService({ args: ['--grace', '0'], env })
    const ended = once(child, 'close')
    child.kill('SIGTERM')
    expect(await ended).toEqual([null, 'SIGKILL'])
    expect(text()).toMatch(/^draughtbook: ended at once: it did not stop in time$/m)
  })

  it('says why when the address is taken', async () => {
    const { base } = await spawnService()
    const port = new URL(base).port
    await expect(spawnService({ args: ['--port', port] })).rejects.toThrow(
      `127.0.0.1:${port} is in use by another program`,
    )
  })
})
