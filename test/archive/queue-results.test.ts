import { describe, expect, it } from 'vitest'
import { type ArchiveTask, archiveTasks } from '../../service/src/archive/archive-tasks'
import { checkResult } from '../../service/src/queue/check-result'
import { folder } from '../service/support/command-line'
import { makeArchive } from './make-archive'

const JOB = 'a'.repeat(64)

/** Checked as a worker sends it. */
const take = <Task extends ArchiveTask>(task: Task, file: string, result: unknown, job = JOB) =>
  checkResult(task, { job: JOB, file }, { job, result })

/** As it comes back from Redis. */
const throughJson = (value: unknown): unknown => JSON.parse(JSON.stringify(value))

async function results() {
  const [made] = await makeArchive(await folder(), 1)
  if (!made) throw new Error('no file')
  const order = { path: made.path, file: made.path, layouts: [], keys: [] }
  return {
    file: made.path,
    register: throughJson(await archiveTasks.register(order)) as { lines: Record<string, unknown>[] },
    rerun: throughJson(await archiveTasks.rerun(order)) as Record<string, unknown>[],
  }
}

describe('a result from the queue', () => {
  it('is taken as it was made', async () => {
    const { file, register, rerun } = await results()
    expect(take('register', file, register)).toEqual(register)
    expect(take('rerun', file, rerun)).toEqual(rerun)
  })

  it('is taken as it was made for what is left out, the workbook of a building among it', () => {
    const file = 'terrace.xlsx'
    const building = {
      name: 'Terrace',
      target: 'own',
      judged: 'summed',
      tests: '4',
      verdict: 'met',
      value: 0.5,
    }
    const leftOut = [{ file, why: 'a workbook of a building', expected: true, kind: 'own report', building }]
    expect(take('register', file, { lines: [], leftOut })).toEqual({ lines: [], leftOut })
  })

  it.each([
    ['a formula in the place of a text', { building: { formula: 'HYPERLINK("https://evil.example")' } }],
    ['a link in the place of a text', { client: { text: 'a', hyperlink: 'https://evil.example' } }],
    ['a text in the place of a figure', { results: { n50: '=1+1' } }],
    ['a field nobody knows', { note: 'x' }],
    ['the name of another file', { file: '/etc/passwd' }],
  ])('is refused for %s', async (_what, changed) => {
    const { file, register } = await results()
    Object.assign(register.lines[0] ?? {}, changed)
    expect(() => take('register', file, register)).toThrow(/^the queue returned/)
    expect(() => take('rerun', file, register)).toThrow(/^the queue returned/)
  })

  it.each<[string, (sent: { job: string; result: unknown }) => unknown]>([
    ['the result of another job', ({ result }) => ({ job: 'b'.repeat(64), result })],
    ['a result from before its job was named in it', ({ result }) => result],
    ['more beside the result', (sent) => ({ ...sent, version: '1.0.0' })],
    ['nothing', () => null],
    ['a text', () => '=1+1'],
    ['a list of results', (sent) => [sent]],
    ['a key that would change objects', ({ job, result }) => ({ job, result: withKey(result, '__proto__') })],
    ['the key of a constructor', ({ job, result }) => ({ job, result: withKey(result, 'constructor') })],
    [
      'more values than any file has',
      ({ job }) => ({ job, result: { lines: [], leftOut: Array(1_100_000).fill(0) } }),
    ],
    [
      'lists within lists',
      ({ job }) => ({ job, result: JSON.parse(`${'['.repeat(500)}${']'.repeat(500)}`) }),
    ],
    [
      'a figure too large to be one',
      ({ job, result }) => ({ job, result: withLine(result, { results: JSON.parse('{"n50":1e999}') }) }),
    ],
    [
      'a figure that nobody knows',
      ({ job, result }) => ({ job, result: withLine(result, { results: JSON.parse('{"n51":5}') }) }),
    ],
    [
      'a text longer than a cell',
      ({ job, result }) => ({ job, result: withLine(result, { client: 'x'.repeat(40_000) }) }),
    ],
    ['no building', ({ job, result }) => ({ job, result: withLine(result, { building: undefined }) })],
    ['a day that is none', ({ job, result }) => ({ job, result: withLine(result, { date: '2026-02-30' }) })],
    [
      'a verdict that nobody gives',
      ({ job, result }) => ({ job, result: withLine(result, { outcome: '=1+1' }) }),
    ],
  ])('is refused with a sentence: %s', async (_what, change) => {
    const { file, register } = await results()
    const sent = change({ job: JOB, result: register })
    for (const task of ['register', 'records', 'rerun'] as const)
      expect(() => checkResult(task, { job: JOB, file }, sent)).toThrow(
        /^the queue returned (a|the) result .*[a-z)]$/,
      )
    expect(({} as Record<string, unknown>).polluted).toBeUndefined()
  })

  // Its form would refuse these too, but only after a long look at each value.
  it.each([
    ['1000000 values', { lines: [], leftOut: Array(1_100_000).fill(0) }],
    ['50 levels', JSON.parse(`${'['.repeat(60)}${']'.repeat(60)}`)],
  ])('is counted before its form is looked at: more than %s', (bound, result) => {
    expect(() => take('register', 'a.xlsx', result)).toThrow(`(more than ${bound})`)
  })
})

type Lines = { lines: Record<string, unknown>[] }
const withKey = (result: unknown, key: string): unknown =>
  JSON.parse(JSON.stringify(result).replace('"file"', `"${key}":{"polluted":true},"file"`))
const withLine = (result: unknown, changed: object): unknown => ({
  ...(result as Lines),
  lines: (result as Lines).lines.map((line) => ({ ...line, ...changed })),
})
