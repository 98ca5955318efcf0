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

const COUNT = 12
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

/** Runs a command to its end, or kills it after a time. Resolves to how long it took. */
async function runOrKill(args: readonly string[], after_ms?: number): Promise<number> {
  const start = performance.now()
  const child = spawnCommand(args)
  child.stdout?.resume()
  child.stderr?.resume()
  const ended = new Promise((resolve) => child.once('close', resolve))
  if (after_ms !== undefined) {
    await Promise.race([ended, pause(after_ms)])
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
  ['register', 'Register', 5, 6],
  ['rerun', 'Files', 2, 4],
] as const)('%s killed at any moment', (command, sheet, head, kills) => {
  it('leaves no half-written output, and a second run completes', async () => {
    const out = join(results, `${command}.xlsx`)
    const args = [command, archive, '--as-of', '2026-10-31', '--workers', '2', '--out', out]
    const whole_ms = await runOrKill(args)
    expect(await tests(out, sheet, head)).toBe(COUNT)
    await rm(out)
    // The same times in every run of the tests; more of them near the end, where the output is written.
    const random = seeded(kills)
    let complete = 0
    for (let kill = 0; kill < kills; kill += 1) {
      await runOrKill(args, whole_ms * Math.sqrt(random()) * 1.05)
      const there = (await readdir(results)).includes(`${command}.xlsx`)
      if (!there) continue
      complete += 1
      expect(await tests(out, sheet, head)).toBe(COUNT)
      await rm(out)
    }
    expect(complete).toBeLessThan(kills)
    await runOrKill(args)
    expect(await tests(out, sheet, head)).toBe(COUNT)
  }, 300_000)
})
