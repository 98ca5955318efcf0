import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { evaluate } from '@draughtbook/shared-calc'
import type { Register } from '@draughtbook/shared-calc/register'
import type { RerunReport } from '@draughtbook/shared-calc/rerun'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { BIN, requireBuild } from '../service/support/built'
import { makeArchive } from './make-archive'

const LONG = 1_800_000
/** Just over a hundred. A thousand and more are run through by the bench of the register. */
const COUNT = 110
/** One workbook unzipped takes 0.4 MB: were they kept, those of a third of a run would take 15 MB and what is made of them much more. */
const MORE_MB = 8
let folder: string
let made: Awaited<ReturnType<typeof makeArchive>>

beforeAll(async () => {
  await requireBuild()
  folder = await mkdtemp(join(tmpdir(), 'draughtbook-hundreds-'))
  made = await makeArchive(folder, COUNT)
}, LONG)
afterAll(() => rm(folder, { recursive: true, force: true }))

/** Says after every few files of a thread how much it holds that is in use, in MB: what is left after clearing up. */
const HOOK = `data:text/javascript,${encodeURIComponent(`
  import fs, { writeSync } from 'node:fs'
  import { syncBuiltinESMExports } from 'node:module'
  import { threadId } from 'node:worker_threads'
  const { open } = fs.promises
  let opened = 0
  fs.promises.open = (path, ...rest) => {
    if (String(path).endsWith('.xlsx') && opened++ % 4 === 3) {
      gc()
      const { heapUsed, external } = process.memoryUsage()
      writeSync(2, 'held ' + threadId + ' ' + (heapUsed + external) / 2 ** 20 + '\\n')
    }
    return open(path, ...rest)
  }
  syncBuiltinESMExports()`)}`

const median = (values: readonly number[]): number =>
  values.toSorted((a, b) => a - b)[values.length >> 1] ?? Number.NaN

/** By how much more is held in the last third of a run than in the second, all threads together, MB. */
function growth_MB(said: string, threads: number): number {
  const held = new Map<string, number[]>()
  for (const [, thread = '', size] of said.matchAll(/^held (\d+) ([\d.]+)$/gm))
    held.set(thread, [...(held.get(thread) ?? []), Number(size)])
  expect(held.size, 'threads that said what they hold').toBe(threads)
  let growth = 0
  for (const sizes of held.values()) {
    const third = Math.floor(sizes.length / 3)
    expect(third, 'looks at the memory of a thread in a third of a run').toBeGreaterThan(1)
    growth += median(sizes.slice(2 * third)) - median(sizes.slice(third, 2 * third))
  }
  return growth
}

/** A command over the archive as a process of its own: its result, and by how much what it holds grows. */
async function command<Result>(
  name: string,
  workers: number,
): Promise<{ result: Result; more_MB: number; code: number | null }> {
  const args = [name, folder, '--as-of', '2026-10-31', '--workers', String(workers), '--json']
  const child = spawn(process.execPath, ['--expose-gc', '--import', HOOK, BIN, ...args])
  const out: Buffer[] = []
  let err = ''
  child.stdout.on('data', (chunk: Buffer) => out.push(chunk))
  child.stderr.on('data', (chunk: Buffer) => {
    err += chunk.toString()
  })
  const [code] = (await once(child, 'close')) as [number | null]
  return {
    result: JSON.parse(Buffer.concat(out).toString()) as Result,
    more_MB: growth_MB(err, workers),
    code,
  }
}

describe('hundreds of workbooks', () => {
  it(
    'are all in the register, every number equal to the single evaluation; memory stays flat',
    async () => {
      const { code, result, more_MB } = await command<Register>('register', 2)
      expect(code).toBe(0)
      expect(result.leftOut).toEqual([])
      const rows = new Map(result.rows.map((row) => [row.file, row]))
      expect(rows.size).toBe(COUNT)
      for (const { path, record } of made) {
        const { results, verdict, recordDigest, runs } = evaluate(record)
        expect(rows.get(path), path).toMatchObject({
          recordDigest,
          outcome: verdict.outcome,
          results: {
            n50: results.n50?.value,
            qE50: results.qE50?.value,
            qF50: results.qF50?.value,
            q50: results.q50.value,
            q4: results.q4.value,
            ela4: results.ela4.value,
          },
          judged: { value: verdict.value, margin: verdict.margin },
          curves: runs.map((run) => ({
            coefficient: run.airLeakageCoefficient.value,
            exponent: run.airFlowExponent.value,
          })),
        })
      }
      console.log(`register: ${more_MB.toFixed(1)} MB more are held near its end`)
      expect(more_MB).toBeLessThan(MORE_MB)
    },
    LONG,
  )

  it(
    'all re-run as issued; memory stays flat',
    async () => {
      const { code, result, more_MB } = await command<RerunReport>('rerun', 1)
      expect(code).toBe(0)
      expect(result.counts['exactly as issued']).toBe(COUNT)
      expect(new Set(result.tests.map(({ file }) => file)).size).toBe(COUNT)
      console.log(`rerun: ${more_MB.toFixed(1)} MB more are held near its end`)
      expect(more_MB).toBeLessThan(MORE_MB)
    },
    LONG,
  )
})
