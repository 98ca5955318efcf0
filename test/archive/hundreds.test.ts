import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { copyFile, mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { evaluate } from '@draughtbook/shared-calc'
import type { Register } from '@draughtbook/shared-calc/register'
import type { RerunReport } from '@draughtbook/shared-calc/rerun'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { BIN, requireBuild } from '../service/support/built'
import { makeArchive } from './make-archive'

const LONG = 1_800_000
/** A thousand and more are run through by the bench of the register. */
const SMALL = 60
const LARGE = 260
/** One workbook unzipped takes 0.4 MB: were they kept, 200 more would take 80 MB and what is made of them much more. */
const MORE_MB = 60
let small: string
let large: string
let made: Awaited<ReturnType<typeof makeArchive>>

beforeAll(async () => {
  await requireBuild()
  small = await mkdtemp(join(tmpdir(), 'draughtbook-hundred-'))
  large = await mkdtemp(join(tmpdir(), 'draughtbook-hundreds-'))
  made = await makeArchive(large, LARGE)
  for (const [i, { path }] of made.slice(0, SMALL).entries()) await copyFile(path, join(small, `${i}.xlsx`))
}, LONG)
afterAll(async () => {
  for (const folder of [small, large]) await rm(folder, { recursive: true, force: true })
})

/** Says at the end how much memory the process ever held, in MB. */
const HOOK = `data:text/javascript,process.on('exit',()=>process.stderr.write('peak '+process.resourceUsage().maxRSS/1024+'\\n'))`

/** A command over an archive as a process of its own: its result, and its peak memory in MB. */
async function command<Result>(
  name: string,
  folder: string,
): Promise<{ result: Result; peak_MB: number; code: number | null }> {
  const args = ['--import', HOOK, BIN, name, folder, '--as-of', '2026-10-31', '--workers', '2', '--json']
  const child = spawn(process.execPath, args)
  const out: Buffer[] = []
  let err = ''
  child.stdout.on('data', (chunk: Buffer) => out.push(chunk))
  child.stderr.on('data', (chunk: Buffer) => {
    err += chunk.toString()
  })
  const [code] = (await once(child, 'close')) as [number | null]
  const peak_MB = Number(/peak ([\d.]+)/.exec(err)?.[1])
  return { result: JSON.parse(Buffer.concat(out).toString()) as Result, peak_MB, code }
}

describe('hundreds of workbooks', () => {
  it(
    'are all in the register, every number equal to the single evaluation; memory stays flat',
    async () => {
      const few = await command<Register>('register', small)
      const many = await command<Register>('register', large)
      expect([few.code, many.code]).toEqual([0, 0])
      expect(many.result.leftOut).toEqual([])
      const rows = new Map(many.result.rows.map((row) => [row.file, row]))
      expect(rows.size).toBe(LARGE)
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
      console.log(
        `register, peak memory: ${few.peak_MB.toFixed(0)} MB for ${SMALL}, ${many.peak_MB.toFixed(0)} MB for ${LARGE}`,
      )
      expect(many.peak_MB - few.peak_MB).toBeLessThan(MORE_MB)
    },
    LONG,
  )

  it(
    'all re-run as issued; memory stays flat',
    async () => {
      const few = await command<RerunReport>('rerun', small)
      const many = await command<RerunReport>('rerun', large)
      expect([few.code, many.code]).toEqual([0, 0])
      expect(many.result.counts['exactly as issued']).toBe(LARGE)
      expect(few.result.counts['exactly as issued']).toBe(SMALL)
      expect(new Set(many.result.tests.map(({ file }) => file)).size).toBe(LARGE)
      console.log(
        `rerun, peak memory: ${few.peak_MB.toFixed(0)} MB for ${SMALL}, ${many.peak_MB.toFixed(0)} MB for ${LARGE}`,
      )
      expect(many.peak_MB - few.peak_MB).toBeLessThan(MORE_MB)
    },
    LONG,
  )
})
