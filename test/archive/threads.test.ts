import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { evaluate } from '@draughtbook/shared-calc'
import { afterAll, beforeAll, describe, expect, it, onTestFinished } from 'vitest'
import { runArchive, runnerHere } from '../../service/src/archive/run-archive'
import { startThreads } from '../../service/src/archive/thread-runner'
import { requireBuild } from '../service/support/built'
import { makeArchive } from './make-archive'

const ENTRY = fileURLToPath(new URL('./poison.mjs', import.meta.url))
let archive: string
let made: Awaited<ReturnType<typeof makeArchive>>

beforeAll(async () => {
  await requireBuild()
  archive = await mkdtemp(join(tmpdir(), 'draughtbook-threads-'))
  made = await makeArchive(archive, 4)
})
afterAll(() => rm(archive, { recursive: true, force: true }))

const orderOf = (path: string, file = path) => ({ path, file, layouts: [], keys: [] })
const threads = (deadline_ms?: number) => {
  const runner = startThreads({ workers: 2, entry: ENTRY, ...(deadline_ms !== undefined && { deadline_ms }) })
  onTestFinished(() => runner.close())
  return runner
}

describe('threads', () => {
  it('give the same results as this thread, in the order of the files', async () => {
    const orders = made.map(({ path }) => orderOf(path))
    const [here, there] = await Promise.all([
      runArchive(runnerHere, 'register', orders),
      runArchive(threads(), 'register', orders),
    ])
    expect(there).toEqual(here)
    expect(there.map(({ lines }) => lines[0]?.results.n50)).toEqual(
      made.map(({ record }) => evaluate(record).results.n50?.value),
    )
  })

  it('set a file aside that kills its worker three times, and do all others', async () => {
    const orders = made.map(({ path }, i) => orderOf(path, i === 2 ? 'poison.xlsx' : path))
    const results = await runArchive(threads(), 'register', orders)
    expect(results.map(({ lines }) => lines.length)).toEqual([1, 1, 0, 1])
    expect(results[2]?.leftOut).toEqual([
      { file: 'poison.xlsx', why: 'it could not be processed: processing it crashed 3 times' },
    ])
  })

  it('set a file aside that never ends', async () => {
    const orders = made.map(({ path }, i) => orderOf(path, i === 0 ? 'slow.xlsx' : path))
    const results = await runArchive(threads(8000), 'rerun', orders)
    expect(results[0]?.[0]?.why).toBe('it could not be processed: it took longer than 8 s')
    expect(results.slice(1).map(([test]) => test?.outcome)).toEqual(
      Array.from({ length: 3 }, () => 'exactly as issued'),
    )
  })

  it('stop when they are told to', async () => {
    const stop = new AbortController()
    const orders = made.map(({ path }) => orderOf(path))
    const run = runArchive(threads(), 'rerun', orders, {
      signal: stop.signal,
      onProgress: () => stop.abort(new Error('told to')),
    })
    await expect(run).rejects.toThrow('told to')
  })
})
