import { watch } from 'node:fs'
import { mkdtemp, readdir, readFile, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { setTimeout as pause } from 'node:timers/promises'
import ExcelJS from 'exceljs'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { requireBuild } from '../service/support/built'
import { spawnCommand } from '../service/support/spawned'
import { makeArchive } from './make-archive'
import { seeded } from './seeded'

const COUNT = 5
let archive: string
let results: string

beforeAll(async () => {
  await requireBuild()
  archive = await mkdtemp(join(tmpdir(), 'draughtbook-killed-'))
  results = await mkdtemp(join(tmpdir(), 'draughtbook-killed-results-'))
  await makeArchive(archive, COUNT)
})
afterAll(async () => {
  for (const folder of [archive, results]) await rm(folder, { recursive: true, force: true })
})

/** Runs a command to its end, or kills it after a time or as soon as it writes. Resolves to how long it took. */
async function runOrKill(args: readonly string[], kill?: number | 'writing'): Promise<number> {
  const start = performance.now()
  const child = spawnCommand(args)
  child.stdout?.resume()
  child.stderr?.resume()
  const ended = new Promise((resolve) => child.once('close', resolve))
  if (kill === 'writing') {
    const watched = watch(results, () => child.kill('SIGKILL'))
    await ended
    watched.close()
  } else if (kill !== undefined) {
    await Promise.race([ended, pause(kill)])
    child.kill('SIGKILL')
  }
  await ended
  return performance.now() - start
}

const tests = async (path: string, sheet: string, head: number): Promise<number> => {
  const workbook = new ExcelJS.Workbook()
  await workbook.xlsx.load((await readFile(path)).buffer as ArrayBuffer)
  return (workbook.getWorksheet(sheet)?.actualRowCount ?? 0) - head
}

describe.each([
  ['register', 'Register', 5, 2, 4],
  ['rerun', 'Files', 2, 1, 3],
] as const)('%s killed at any moment', (command, sheet, head, workers, kills) => {
  it('leaves no half-written output, and a second run completes', async () => {
    const out = join(results, `${command}.xlsx`)
    const args = [command, archive, '--as-of', '2026-10-31', '--workers', String(workers), '--out', out]
    const whole_ms = await runOrKill(args)
    expect(await tests(out, sheet, head)).toBe(COUNT)
    await rm(out)
    // The same times in every run of the tests; more of them near the end, where the output is written.
    const random = seeded(kills)
    const moments = Array.from({ length: kills }, () => whole_ms * Math.sqrt(random()) * 1.05)
    let complete = 0
    for (const moment of [...moments, 'writing'] as const) {
      await runOrKill(args, moment)
      const there = (await readdir(results)).includes(`${command}.xlsx`)
      if (!there) continue
      complete += 1
      expect(await tests(out, sheet, head), `killed: ${moment}`).toBe(COUNT)
      await rm(out)
    }
    expect(complete).toBeLessThanOrEqual(kills)
    await runOrKill(args)
    expect(await tests(out, sheet, head)).toBe(COUNT)
  }, 300_000)
})
