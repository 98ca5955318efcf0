import { readdir } from 'node:fs/promises'
import { connect, type Socket } from 'node:net'
import { fileURLToPath } from 'node:url'
import fc from 'fast-check'
import { describe, expect, it, onTestFinished } from 'vitest'
import { JSON_BYTES } from '../../service/src/http/read-body'
import { planRequest } from '../site/support/plan-request'
import { bodiesAround, recordBodies } from './support/arbitrary-bodies'
import { folder } from './support/command-line'
import { seed, sender } from './support/fuzzing'
import { nearLargestRecord } from './support/near-largest'
import { type Spawned, spawnService } from './support/spawned'

/** Longest time the event loop may be held, ms. */
const MOST_ms = 50
/** As many files as one request may have. */
const MOST_PARTS = 2000
const METER = fileURLToPath(new URL('support/hold-meter.mjs', import.meta.url))

const PATHS = [
  'evaluations',
  'workbooks',
  'readings',
  'take-offs',
  'plans',
  'running-estimates',
  'leak-reports',
]

/** Bodies of nearly the largest size, each of them awkward in a way of its own. */
function largeBodies(): string[] {
  const most = JSON_BYTES - 1000
  const repeat = (piece: string, open: string, close: string) =>
    open +
    Array.from({ length: Math.floor((most - open.length) / (piece.length + 1)) }, () => piece).join(',') +
    close
  return [
    JSON.stringify(nearLargestRecord()),
    repeat('"a":1', '{', '}'),
    `{${Array.from({ length: 80_000 }, (_, i) => `"k${i}":1`).join()}}`,
    repeat(
      '{"pressure_Pa":-50,"flow_m3_h":90}',
      '{"format":"draughtbook/record@1","runs":[{"readings":[',
      ']}]}',
    ),
    repeat('"x y"', '[', ']'),
    '['.repeat(most),
    `{"format":"${'\\u0000'.repeat(most / 6 - 10)}"}`,
    `{"building":{"name":"${'('.repeat(most / 2)}${' '.repeat(most / 2 - 100)}"}}`,
  ]
}

/** The longest hold since the last look, ms. */
async function longestHold({ child, text }: Spawned): Promise<number> {
  const before = text().length
  child.kill('SIGUSR2')
  await expect.poll(() => text().slice(before), { timeout: 30_000 }).toMatch(/longest hold [\d.]+ ms\n/)
  return Number(/longest hold ([\d.]+) ms/.exec(text().slice(before))?.[1])
}

/** Cells at the far end of many sheets: a small body, and much to search. */
const farCells = JSON.stringify({
  ranges: Array.from({ length: 40 }, (_, i) => ({
    sheet: `S${i}`,
    address: 'XFD1048576',
    values: [['Volume', 400]],
  })),
})

const firstReading = {
  method: 'iso-9972:2015',
  building: { volume_m3: 320 },
  conditions: {},
  run: { direction: 'depressurisation', readings: [{ pressure_Pa: -66, flow_m3_h: 240 }] },
}

const LEAVERS = 300
const UPLOAD = `POST /v1/registers HTTP/1.1\r\nhost: localhost\r\ncontent-type: multipart/form-data; boundary=b\r\ncontent-length: 100000\r\n\r\n--b\r\ncontent-disposition: form-data; name="files"; filename="a.csv"\r\n\r\na,b`

/** Begins so many uploads. Resolves once each has a file in the folder for them. */
async function beginUploads(base: string, count: number, disk: string): Promise<Socket[]> {
  const sockets = Array.from({ length: count }, () => {
    const socket = connect(Number(new URL(base).port), '127.0.0.1')
    onTestFinished(() => void socket.destroy())
    socket.on('error', () => undefined)
    socket.write(UPLOAD)
    return socket
  })
  await expect.poll(() => uploadsIn(disk), { timeout: 60_000 }).toBe(count)
  return sockets
}

/** Files of uploads that lie in a folder. */
const uploadsIn = async (disk: string): Promise<number> =>
  (await readdir(disk, { recursive: true, withFileTypes: true })).filter((one) => one.isFile()).length

describe('the event loop of the service', () => {
  it(`is never held for more than ${MOST_ms} ms of processor time, by nearly largest bodies or hostile ones`, async () => {
    const service = await spawnService({
      args: ['--library', await folder(), '--timeout', '300', '--log-level', 'error'],
      env: { NODE_OPTIONS: `--import ${METER}` },
    })
    await service.says(/^draughtbook: ready$/m)
    const send = sender(service.base)
    await longestHold(service)
    // Whoever asks first waits for nothing to be loaded or made.
    for (const page of ['/api', '/openapi.json', '/stored', '/status', '/v1/formulas', '/v1/library'])
      expect((await send('GET', page, '')).status).toBe(200)
    const plan = JSON.stringify(planRequest)
    expect((await send('POST', '/v1/plans', plan)).status).toBe(200)
    expect((await send('POST', '/v1/running-estimates', JSON.stringify(firstReading))).status).toBe(200)
    for (const path of PATHS) await send('POST', `/v1/${path}`, '{}')
    const byFirst = await longestHold(service)
    expect(byFirst).toBeLessThan(MOST_ms)

    const statuses: number[] = []
    for (const body of largeBodies())
      await Promise.all(
        PATHS.filter((path) => path !== 'workbooks').map(async (path) => {
          statuses.push((await send('POST', `/v1/${path}`, body)).status)
        }),
      )
    statuses.push((await send('POST', '/v1/readings', farCells)).status)
    expect(Math.max(...statuses)).toBeLessThan(500)
    expect(statuses).toContain(200)
    const byLarge = await longestHold(service)
    expect(byLarge).toBeLessThan(MOST_ms)

    const hostile = fc.sample(
      fc.oneof(
        recordBodies,
        bodiesAround(() => planRequest),
      ),
      { numRuns: 1500, seed },
    )
    const answers: number[] = []
    for (let at = 0; at < hostile.length; at += 25)
      await Promise.all(
        hostile.slice(at, at + 25).map(async (body, i) => {
          answers.push((await send('POST', `/v1/${PATHS[(at + i) % PATHS.length]}`, body)).status)
        }),
      )
    expect(Math.max(...answers)).toBeLessThan(500)
    const byHostile = await longestHold(service)
    console.log(
      `longest hold: ${byFirst} ms by first requests, ${byLarge} ms by large bodies, ${byHostile} ms by hostile ones`,
    )
    expect(byHostile).toBeLessThan(MOST_ms)
  }, 300_000)

  it(`is not held for longer by ${MOST_PARTS} files with next to nothing in them, by wrong layouts, or by ${LEAVERS} senders who leave at once`, async () => {
    const disk = await folder()
    const service = await spawnService({
      args: ['--log-level', 'error'],
      env: { NODE_OPTIONS: `--import ${METER}`, TMPDIR: disk },
    })
    await service.says(/^draughtbook: ready$/m)
    const post = async (parts: number) => {
      const part = (i: number) =>
        `--b\r\ncontent-disposition: form-data; name="files"; filename="${i}.xlsx"\r\n\r\nx\r\n`
      // Sent as one piece, so that as much as possible arrives at once.
      const answer = await fetch(`${service.base}/v1/registers?asOf=2026-10-31`, {
        method: 'POST',
        headers: { 'content-type': 'multipart/form-data; boundary=b' },
        body: `${Array.from({ length: parts }, (_, i) => part(i)).join('')}--b--\r\n`,
      })
      return JSON.parse((await answer.text()).trim().split('\n').at(-1) ?? '')
    }
    // What is loaded at the first request of its kind is over after it.
    await post(1)
    await longestHold(service)
    // Some of the largest layouts, with nothing right in them.
    const layouts = new FormData()
    for (const text of ['"a":1,'.repeat(10_000), '"', '['.repeat(60_000)])
      layouts.append('layouts', new Blob([`{${text}"z":1}`]), 'layout.json')
    layouts.append('files', new Blob(['x']), 'x.csv')
    expect((await fetch(`${service.base}/v1/registers`, { method: 'POST', body: layouts })).status).toBe(400)
    const { register } = await post(MOST_PARTS)
    expect(register.leftOut).toHaveLength(MOST_PARTS)
    const held = await longestHold(service)
    expect(held).toBeLessThan(MOST_ms)

    const senders = await beginUploads(service.base, LEAVERS, disk)
    const byBeginning = await longestHold(service)
    for (const socket of senders) socket.resetAndDestroy()
    await expect.poll(() => uploadsIn(disk), { timeout: 60_000 }).toBe(0)
    const byLeaving = await longestHold(service)
    console.log(
      `longest hold: ${held} ms by ${MOST_PARTS} small files, ${byBeginning} ms by ${LEAVERS} uploads that begin, ${byLeaving} ms when all end`,
    )
    expect(Math.max(byBeginning, byLeaving)).toBeLessThan(MOST_ms)
  }, 300_000)
})
