import { readdir, readFile, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { createApp } from '../../service/src/app'
import { ProblemBody } from '../../service/src/http/problem-body'
import { badInputs } from './support/bad-input'
import { commandLine, folder } from './support/command-line'
import { listen, postJson } from './support/listen'

describe('bad input on the command line', () => {
  it.each(badInputs)('$what: one clear line naming the field, exit 2, nothing written', async (bad) => {
    const here = await folder()
    const file = join(here, 'plot-7.json')
    const old = join(here, 'old.xlsx')
    await writeFile(file, bad.body)
    await writeFile(old, 'what stood here before')
    for (const more of [[], ['--out', old], ['--json']]) {
      const { code, out, err } = await commandLine('evaluate', file, ...more)
      expect(code).toBe(2)
      expect(out).toBe('')
      expect(err[0]).toMatch(bad.says)
      expect(err[0]).toContain(bad.path ? `${file}: ${bad.path}: ` : `${file}: `)
      expect(err.filter((line) => line.includes(`${bad.path}: `)).length).toBe(1)
    }
    expect((await readdir(here)).sort()).toEqual(['old.xlsx', 'plot-7.json'])
    expect(await readFile(old, 'utf8')).toBe('what stood here before')
  })
})

describe('bad input through the HTTP door', () => {
  it.each(badInputs)('$what: a problem that names the field', async (bad) => {
    const base = await listen(createApp())
    for (const door of ['/v1/evaluations', '/v1/workbooks']) {
      const answer = await postJson(base + door, bad.body)
      expect(answer.status).toBe(bad.status)
      expect(answer.headers.get('content-type')).toMatch(/^application\/problem\+json/)
      const problem = ProblemBody.parse(await answer.json())
      expect(problem.status).toBe(bad.status)
      expect(problem.errors?.[0]?.path).toBe(bad.path)
      expect(problem.errors?.[0]?.message).toMatch(bad.says)
    }
  })

  it.each(['/%ff', '/v1/%zz', '/100%'])('is 400 for the address %s, as a problem', async (path) => {
    const answer = await fetch((await listen(createApp())) + path)
    expect(answer.status).toBe(400)
    expect(ProblemBody.parse(await answer.json()).title).toBe('The address cannot be read')
  })

  it('is 415 for another type and for a packed body, 413 for a body above 1 MB', async () => {
    const base = await listen(createApp())
    const url = `${base}/v1/evaluations`
    const statusOf = async (body: BodyInit, headers: Record<string, string>) =>
      (await postJson(url, body, headers)).status
    expect(await statusOf('{}', { 'content-type': 'text/plain' })).toBe(415)
    expect(await statusOf('{}', { 'content-encoding': 'gzip' })).toBe(415)
    expect(await statusOf(' '.repeat(1024 * 1024 + 1), {})).toBe(413)
  })

  it('names what is wrong with a query, a method and an address', async () => {
    const base = await listen(createApp())
    const query = await postJson(`${base}/v1/evaluations?trace=yes&more=1`, '{}')
    expect(query.status).toBe(400)
    expect(JSON.stringify(await query.json())).toMatch(/trace.*must be 0 or 1/)
    for (const door of ['registers', 'reruns']) {
      // No such day.
      const day = await fetch(`${base}/v1/${door}?asOf=2026-02-30`, { method: 'POST', body: new FormData() })
      expect(day.status).toBe(400)
      expect(JSON.stringify(await day.json())).toMatch(/asOf.*must be a date such as 2026-10-31/)
    }
    const method = await fetch(`${base}/v1/evaluations`)
    expect(method.status).toBe(405)
    expect(method.headers.get('allow')).toBe('POST')
    expect((await fetch(`${base}/v2/evaluations`)).status).toBe(404)
  })
})
