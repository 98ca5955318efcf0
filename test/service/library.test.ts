import { mkdir, readdir, readFile, rm, utimes, writeFile } from 'node:fs/promises'
import { request } from 'node:http'
import { join } from 'node:path'
import { deviceForRecord, LibraryDevice, parseRecord, targetForRecord } from '@draughtbook/shared-calc'
import { describe, expect, it, onTestFinished } from 'vitest'
import { createApp } from '../../service/src/app'
import { Library } from '../../service/src/library/library'
import { ROLES } from '../../service/src/security/caller.js'
import { makeToken } from '../../service/src/security/tokens/token'
import { writeTokens } from '../../service/src/security/tokens/token-file'
import { folder } from './support/command-line'
import { listen } from './support/listen'
import { demoRecord } from './support/record'
import { settings } from './support/settings'

/** An invented device. */
const DEVICE = {
  format: 'draughtbook/device@1',
  name: 'Fan A',
  serial: 'invented 1',
  calibrationDue: '2027-03-01',
  referenceDensity_kg_m3: 1.2041,
  ranges: [
    { label: 'wide', coefficient: 120, exponent: 0.5, minimumPressure_Pa: 25, maximumPressure_Pa: 300 },
  ],
  calibrations: [{ date: '2026-03-01', due: '2027-03-01', certificate: 'invented 17' }],
}

async function service() {
  const root = await folder()
  const base = await listen(createApp({ settings: settings({ library: root }) }))
  const call = (method: string, path: string, headers: Record<string, string> = {}, value?: unknown) =>
    fetch(`${base}/v1/library${path}`, {
      method,
      headers: { 'content-type': 'application/json', ...headers },
      ...(value !== undefined && { body: typeof value === 'string' ? value : JSON.stringify(value) }),
    })
  return { root, base, call }
}

/** Sends the path exactly as it is; fetch would tidy it first. */
const statusOf = (base: string, method: string, path: string) =>
  new Promise<number | undefined>((resolve, reject) => {
    const headers = { 'content-type': 'application/json', ...NEW }
    const { hostname, port } = new URL(base)
    const sent = request({ hostname, port, method, path, headers }, (answer) => {
      answer.resume()
      resolve(answer.statusCode)
    })
    sent.on('error', reject)
    sent.end(method === 'PUT' ? JSON.stringify(DEVICE) : undefined)
  })

const NEW = { 'if-none-match': '*' }
const based = (etag: string | null) => ({ 'if-match': etag ?? '' })

describe('the library', () => {
  it('saves, shows, changes and removes an entry, and keeps every state', async () => {
    const { root, call } = await service()
    const made = await call('PUT', '/devices/fan-a', NEW, DEVICE)
    expect(made.status).toBe(201)
    const read = await call('GET', '/devices/fan-a')
    expect(read.headers.get('etag')).toBe(made.headers.get('etag'))
    expect(await read.json()).toEqual(DEVICE)
    const changed = await call('PUT', '/devices/fan-a', based(read.headers.get('etag')), {
      ...DEVICE,
      name: 'Fan A, new',
    })
    expect(changed.status).toBe(200)
    expect(changed.headers.get('etag')).not.toBe(read.headers.get('etag'))
    expect((await call('DELETE', '/devices/fan-a', based(changed.headers.get('etag')))).status).toBe(204)
    expect((await call('GET', '/devices/fan-a')).status).toBe(404)
    const { versions } = (await (await call('GET', '/devices/fan-a/history')).json()) as {
      versions: { version: string; saved: string }[]
    }
    expect(versions.map(({ version }) => `"${version}"`)).toEqual([
      changed.headers.get('etag'),
      made.headers.get('etag'),
    ])
    const first = await call('GET', `/devices/fan-a/history/${versions[1]?.version}`)
    expect(await first.json()).toEqual(DEVICE)
    expect(await readdir(join(root, 'devices'))).toEqual([])
  })

  it('deletes the earlier states of an entry when asked, and all of them once the entry is gone', async () => {
    const { root, call } = await service()
    const made = await call('PUT', '/devices/fan-a', NEW, DEVICE)
    const changed = await call('PUT', '/devices/fan-a', based(made.headers.get('etag')), {
      ...DEVICE,
      name: 'B',
    })
    const kept = async () => {
      const answer = await call('GET', '/devices/fan-a/history')
      return ((await answer.json()) as { versions: { version: string }[] }).versions.map(
        ({ version }) => `"${version}"`,
      )
    }
    expect(await kept()).toHaveLength(2)
    expect((await call('DELETE', '/devices/fan-a/history')).status).toBe(204)
    expect(await kept()).toEqual([changed.headers.get('etag')])
    expect(await (await call('GET', '/devices/fan-a')).json()).toMatchObject({ name: 'B' })
    await call('DELETE', '/devices/fan-a', based(changed.headers.get('etag')))
    expect((await call('DELETE', '/devices/fan-a/history')).status).toBe(204)
    expect(await kept()).toEqual([])
    expect(await readdir(join(root, '.history', 'devices'))).toEqual([])
  })

  it('lets no change undo another one unseen', async () => {
    const { call } = await service()
    const { headers } = await call('PUT', '/devices/fan-a', NEW, DEVICE)
    const etag = headers.get('etag')
    expect((await call('PUT', '/devices/fan-a', NEW, DEVICE)).status).toBe(412)
    expect((await call('PUT', '/devices/fan-a', {}, DEVICE)).status).toBe(428)
    expect((await call('PUT', '/devices/fan-a', { 'if-match': '*' }, DEVICE)).status).toBe(428)
    const names = ['one', 'two', 'three', 'four', 'five']
    const answers = await Promise.all(
      names.map((name) => call('PUT', '/devices/fan-a', based(etag), { ...DEVICE, name })),
    )
    expect(answers.map(({ status }) => status).sort()).toEqual([200, 412, 412, 412, 412])
    const winner = names[answers.findIndex(({ status }) => status === 200)]
    expect(await (await call('GET', '/devices/fan-a')).json()).toMatchObject({ name: winner })
    const same = await call('GET', '/devices/fan-a', { 'if-none-match': etag ?? '' })
    expect(same.status).toBe(200)
    const now = same.headers.get('etag') ?? ''
    expect((await call('GET', '/devices/fan-a', { 'if-none-match': now })).status).toBe(304)
  })

  it('lets two services that share the folder change one entry only one after the other', async () => {
    const root = await folder()
    const [a, b] = [new Library(root), new Library(root)]
    const value = LibraryDevice.parse(DEVICE)
    const version = await a.put('devices', 'fan-a', value, undefined)
    const results = await Promise.allSettled(
      Array.from({ length: 10 }, (_, i) =>
        (i % 2 ? a : b).put('devices', 'fan-a', { ...value, name: `change ${i}` }, version),
      ),
    )
    expect(results.filter(({ status }) => status === 'fulfilled').length).toBe(1)
  })

  it('names every wrong field of what is sent', async () => {
    const { root, call } = await service()
    const wrong = { ...DEVICE, colour: 'red', ranges: [{ label: 'wide', coefficient: 'x' }] }
    const answer = await call('PUT', '/devices/fan-a', NEW, wrong)
    expect(answer.status).toBe(422)
    const { errors } = (await answer.json()) as { errors: { path: string }[] }
    expect(errors.map(({ path }) => path).sort()).toEqual(['colour', 'ranges[0].coefficient'])
    expect((await call('PUT', '/devices/fan-a', NEW, '{')).status).toBe(400)
    expect((await call('PUT', '/devices/fan-a', NEW, `{"x":"${'x'.repeat(300_000)}"}`)).status).toBe(413)
    expect(await readdir(root)).toEqual([])
  })

  it.each([
    '/devices/..%2f..%2fetc%2fpasswd',
    '/devices/..%5c..%5cwin',
    '/devices/%2e%2e',
    '/devices/../../x',
    '/devices/..%c0%af',
    '/devices/fan-a%00',
    '/devices/Fan-A',
    '/devices/.history',
    '/devices/-fan',
    '/devices/con',
    `/devices/${'a'.repeat(65)}`,
    '/..%2fdevices/fan-a',
    '/.history/fan-a',
    '/constructor/fan-a',
    '/__proto__/fan-a',
    '/devices/fan-a/history/..%2f..%2fx',
  ])('never reads or writes outside its folders: %s', async (path) => {
    const { root, base } = await service()
    for (const method of ['GET', 'PUT', 'DELETE'])
      expect([400, 404, 405]).toContain(await statusOf(base, method, `/v1/library${path}`))
    expect(await readdir(root)).toEqual([])
  })

  it('takes edits by hand, keeps their history, and stays with the last good state of a wrong file', async () => {
    const { root, call } = await service()
    const file = join(root, 'devices', 'fan-a.json')
    await mkdir(join(root, 'devices'))
    await writeFile(file, JSON.stringify(DEVICE, null, 2))
    const list = async () => (await (await call('GET', '/devices')).json()) as Listing
    expect((await list()).entries.map(({ id }) => id)).toEqual(['fan-a'])
    // Edits are seen by a clock that goes on, not by the time of day, which may be put back.
    const now = Date.now
    Date.now = () => now() - 3_600_000
    onTestFinished(() => {
      Date.now = now
    })
    await writeFile(file, JSON.stringify(DEVICE, null, 2).replace('"exponent": 0.5', '"exponent": "half"'))
    await expect.poll(async () => (await list()).faults.length, { timeout: 4000 }).toBe(1)
    const { entries, faults } = await list()
    expect(entries[0]?.value).toEqual(DEVICE)
    expect(faults[0]).toMatchObject({
      file: 'devices/fan-a.json',
      line: 11,
      path: 'ranges[0].exponent',
      lastGood: true,
    })
    expect(faults[0]?.message).toMatch(/must be a number, not the text "half"/)
    // A service that starts now knows the last good state from the history.
    const other = await new Library(root).list('devices')
    expect(other.entries[0]?.value).toEqual(DEVICE)
    await writeFile(file, '{ "format": "draughtbook/device@1",\n  "name": oops }')
    await utimes(file, new Date(), new Date(Date.now() + 5000))
    await expect.poll(async () => (await list()).faults[0]?.line, { timeout: 4000 }).toBe(2)
    await rm(file)
    await expect.poll(async () => (await list()).entries.length, { timeout: 4000 }).toBe(0)
  })

  it('lets only those change it who may', async () => {
    const root = await folder()
    const tokens = join(root, 'tokens.json')
    const [reader, keeper] = [makeToken('reader', 1, ['evaluate', 'archive']), makeToken('keeper', 1, ROLES)]
    await writeTokens(tokens, [reader.stored, keeper.stored])
    const base = await listen(createApp({ settings: settings({ library: root, tokens }) }))
    const firm = async (token: string) =>
      (await fetch(`${base}/v1/firm`, { headers: { authorization: `Bearer ${token}` } })).json()
    expect(await firm(reader.token)).toEqual({ library: true })
    expect(await firm(keeper.token)).toEqual({ library: true, changesLibrary: true })
    const put = (token: string) =>
      fetch(`${base}/v1/library/devices/fan-a`, {
        method: 'PUT',
        headers: { authorization: `Bearer ${token}`, 'content-type': 'application/json', ...NEW },
        body: JSON.stringify(DEVICE),
      })
    expect((await put(reader.token)).status).toBe(403)
    expect((await put(keeper.token)).status).toBe(201)
  })

  it('gives a record a copy that says where it is from', async () => {
    const device = LibraryDevice.parse(DEVICE)
    const record = parseRecord({
      ...demoRecord(),
      flowDevice: deviceForRecord(device, 'fan-a', '3f2a9c1b7d20e5a4'),
      target: targetForRecord({
        format: 'draughtbook/target@1',
        name: 'A client’s limit',
        target: { quantity: 'n50', limit: 0.5 },
      }),
    })
    expect(record.flowDevice).toEqual({
      serial: 'invented 1',
      calibrationDue: '2027-03-01',
      referenceDensity_kg_m3: 1.2041,
      ranges: DEVICE.ranges,
      libraryEntry: 'devices/fan-a@3f2a9c1b7d20e5a4',
    })
    expect(record.target).toEqual({ label: 'A client’s limit', quantity: 'n50', limit: 0.5 })
  })

  it('says so when there is none', async () => {
    const base = await listen(createApp())
    const answer = await fetch(`${base}/v1/library/devices`)
    expect(answer.status).toBe(404)
    expect(await answer.json()).toMatchObject({ title: 'No library is set up' })
  })
})

interface Listing {
  entries: { id: string; value: unknown }[]
  faults: { file: string; line?: number; path: string; message: string; lastGood: boolean }[]
}

it('a library file is written whole or not at all', async () => {
  const { root, call } = await service()
  await call('PUT', '/devices/fan-a', NEW, DEVICE)
  const names = await readdir(join(root, 'devices'))
  expect(names).toEqual(['fan-a.json'])
  expect(await readFile(join(root, 'devices', 'fan-a.json'), 'utf8')).toBe(
    `${JSON.stringify(DEVICE, null, 2)}\n`,
  )
})

describe('/v1/firm', () => {
  it('gives the firm’s name and logo, nothing where there is none, and names the file that cannot be read', async () => {
    const { root, base } = await service()
    const firm = () => fetch(`${base}/v1/firm`)
    expect(await (await firm()).json()).toEqual({ library: true, changesLibrary: true })
    await mkdir(join(root, 'firm'))
    await writeFile(join(root, 'firm', 'firm.json'), '{ "name": "Invented Testers" }')
    await writeFile(join(root, 'firm', 'logo.png'), Buffer.from('logo'))
    expect(await (await firm()).json()).toEqual({
      library: true,
      changesLibrary: true,
      name: 'Invented Testers',
      logo: 'bG9nbw==',
    })
    await writeFile(join(root, 'firm', 'firm.json'), '{ "name": 7 }')
    const answer = await firm()
    expect(answer.status).toBe(503)
    expect(await answer.text()).toContain('\\"name\\" must be a text')
  })
})
