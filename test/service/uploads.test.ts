import { gzipSync } from 'node:zlib'
import { LIMITS } from '@draughtbook/shared-calc/log'
import { describe, expect, it } from 'vitest'
import { createApp } from '../../service/src/app'
import { hostileFiles } from '../log/hostile/hostile-files'
import { listen, postJson } from './support/listen'
import { testPool } from './support/running'

const form = (files: readonly (readonly [string, Uint8Array])[]) => {
  const body = new FormData()
  for (const [name, bytes] of files) body.append('files', new Blob([Uint8Array.from(bytes)]), name)
  return body
}

interface Last {
  register?: { rows: unknown[]; leftOut: { file: string; why: string }[] }
  rerun?: { tests: { file: string }[] }
  problem?: unknown
}

const lastLine = async (answer: Response): Promise<Last> =>
  JSON.parse((await answer.text()).trim().split('\n').at(-1) ?? '')

describe('hostile workbooks through the upload routes', () => {
  it('are each named with the reason; the service lives on', async () => {
    const base = await listen(createApp({ jobs: await testPool({ workers: 1, queue: 50 }) }))
    const made = hostileFiles.map(({ name, make }) => [`hostile/${name}`, make()] as const)
    // Those too large to be taken at all are the next test's.
    const files = made.filter(([, bytes]) => bytes.length <= LIMITS.fileBytes)
    expect(files.length).toBeGreaterThan(10)
    const answer = await fetch(`${base}/v1/registers?asOf=2026-10-31`, { method: 'POST', body: form(files) })
    expect(answer.status).toBe(200)
    const { register } = await lastLine(answer)
    expect(register?.rows).toEqual([])
    expect(register?.leftOut.map(({ file }) => file).sort()).toEqual(files.map(([name]) => name).sort())
    expect(register?.leftOut.every(({ why }) => why.length > 10)).toBe(true)
    const again = await fetch(`${base}/v1/reruns?asOf=2026-10-31`, { method: 'POST', body: form(files) })
    expect(again.status).toBe(200)
    expect((await lastLine(again)).problem).toBeUndefined()
    expect((await fetch(`${base}/healthz`)).status).toBe(200)
  }, 180_000)

  it('are not taken at all when larger than any workbook that is read', async () => {
    const base = await listen(createApp())
    const body = form([['large.xlsx', new Uint8Array(LIMITS.fileBytes + 1)]])
    const answer = await fetch(`${base}/v1/registers?asOf=2026-10-31`, { method: 'POST', body })
    expect(answer.status).toBe(413)
    expect((await fetch(`${base}/healthz`)).status).toBe(200)
  })

  it('lead nowhere by their names', async () => {
    const base = await listen(createApp())
    // The last is cut to 400 letters, in the middle of a character.
    const names = [
      '../../etc/passwd',
      '..\\..\\windows',
      '/etc/passwd',
      'a/../../b.xlsx',
      `${'a'.repeat(399)}🏠`,
    ]
    const body = form(names.map((name) => [name, new Uint8Array([1, 2, 3])] as const))
    const answer = await fetch(`${base}/v1/registers?asOf=2026-10-31`, { method: 'POST', body })
    const { register, ...other } = await lastLine(answer)
    expect(other).toEqual({})
    expect(register?.leftOut.length).toBe(names.length)
    for (const { file } of register?.leftOut ?? []) expect(file).not.toMatch(/^\/|\.\.|\p{Surrogate}/u)
  })
})

it('compressed workbooks are refused as compressed records are: they unpack to any size', async () => {
  const base = await listen(createApp())
  for (const path of ['/v1/registers', '/v1/reruns', '/v1/buildings', '/v1/stages', '/v1/evaluations']) {
    const type = path === '/v1/evaluations' ? 'application/json' : 'multipart/form-data; boundary=b'
    const headers = { 'content-type': type, 'content-encoding': 'gzip' }
    const answer = await fetch(base + path, { method: 'POST', headers, body: gzipSync(Buffer.alloc(1000)) })
    expect(answer.status, path).toBe(415)
  }
})

describe('a multipart body that is none', () => {
  it.each([
    ['no multipart at all', 'application/json', '{}', 415],
    ['no boundary', 'multipart/form-data', 'x', 400],
    [
      'a body cut short',
      'multipart/form-data; boundary=b',
      '--b\r\ncontent-disposition: form-data; name="files"; filename="a"\r\n\r\nx',
      400,
    ],
    ['nothing in it', 'multipart/form-data; boundary=b', '--b--\r\n', 422],
    [
      'an unknown field',
      'multipart/form-data; boundary=b',
      '--b\r\ncontent-disposition: form-data; name="other"; filename="a"\r\n\r\nx\r\n--b--\r\n',
      422,
    ],
    [
      'a field that is no file',
      'multipart/form-data; boundary=b',
      '--b\r\ncontent-disposition: form-data; name="__proto__"\r\n\r\nx\r\n--b--\r\n',
      422,
    ],
  ])('%s is a problem', async (_what, type, body, status) => {
    const base = await listen(createApp())
    for (const path of ['/v1/registers', '/v1/reruns']) {
      const answer = await fetch(base + path, { method: 'POST', body, headers: { 'content-type': type } })
      expect(answer.status).toBe(status)
      expect(answer.headers.get('content-type')).toMatch(/problem\+json/)
    }
  })

  it.each([
    [
      'other',
      1,
      'send only files, in the parts files, layouts and keys; settings such as month belong in the query',
    ],
    [
      '__proto__',
      1,
      'send only files, in the parts files, layouts and keys; settings such as month belong in the query',
    ],
    ['layouts', 21, 'at most 20 files are taken in this part'],
  ])('with a part that is not taken is told what is: %s', async (field, count, message) => {
    const base = await listen(createApp())
    const body = form([['one.xlsx', new Uint8Array(10)]])
    for (let i = 0; i < count; i++) body.append(field, new Blob(['{}']), 'a.json')
    const answer = await fetch(`${base}/v1/registers`, { method: 'POST', body })
    const { errors } = (await answer.json()) as { errors: { message: string }[] }
    expect(errors.map((one) => one.message)).toEqual([message])
  })

  it.each([
    ['layouts', 'registers', 'layout.json has 98 kB; at most 64 kB are read'],
    ['keys', 'reruns', 'layout.json has 98 kB; at most 16 kB are read'],
  ])('beside workbooks are small: %s', async (field, route, message) => {
    const base = await listen(createApp())
    const body = form([['one.xlsx', new Uint8Array(10)]])
    body.append(field, new Blob(['['.repeat(100_000)]), 'layout.json')
    const answer = await fetch(`${base}/v1/${route}?asOf=2026-10-31`, { method: 'POST', body })
    expect([answer.status, ((await answer.json()) as { errors: unknown }).errors]).toEqual([
      422,
      [{ path: field, message }],
    ])
  })
})

describe('hostile JSON', () => {
  it('with keys of an object’s prototype changes nothing and is refused by name', async () => {
    const base = await listen(createApp())
    const body =
      '{"__proto__":{"polluted":1},"constructor":{"prototype":{"polluted":1}},"format":"draughtbook/record@1"}'
    for (const path of ['/v1/evaluations', '/v1/workbooks', '/v1/readings', '/v1/plans', '/v1/take-offs']) {
      const answer = await postJson(base + path, body)
      expect(answer.status).toBe(422)
      expect(await answer.text()).toMatch(/__proto__|constructor/)
    }
    expect(Reflect.get({}, 'polluted')).toBeUndefined()
  })
})
