import { describe, expect, it } from 'vitest'
import { archiveTasks } from '../../service/src/archive/archive-tasks'
import { checkResult } from '../../service/src/queue/check-result'
import { folder } from '../service/support/command-line'
import { makeArchive } from './make-archive'

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
    expect(checkResult('register', file, register)).toEqual(register)
    expect(checkResult('rerun', file, rerun)).toEqual(rerun)
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
    expect(checkResult('register', file, { lines: [], leftOut })).toEqual({ lines: [], leftOut })
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
    expect(() => checkResult('register', file, register)).toThrow(/^the queue returned/)
    expect(() => checkResult('rerun', file, register)).toThrow(/^the queue returned/)
  })
})
