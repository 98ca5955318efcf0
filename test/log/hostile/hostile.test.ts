import { execFile } from 'node:child_process'
import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { promisify } from 'node:util'
import { beforeAll, describe, expect, it } from 'vitest'
import { hostileFiles as hostileBooks } from './hostile-files'
import { hostileSpreadsheets } from './hostile-spreadsheets'

const run = promisify(execFile)
const hostileFiles = [...hostileBooks, ...hostileSpreadsheets]
const bundle = resolve('test/output/log-reader')

interface Ending {
  problems: { code: string; message: string }[]
  seconds: number
  /** Seconds a fixed piece of work took just after a file that took long; else 0. */
  yard: number
  megabytes: number
}

/** What the fixed piece of work takes on the machine that the 2 s were set on, when it has nothing else to do. */
const USUAL_YARD_s = 0.2

let endings: Ending[] = []

/** The reader as `npm run verify` has just compiled it; while working, built anew from its sources. */
async function builtReader(): Promise<string> {
  if (process.env.TEST_COMPILED === '1') return resolve('shared-calc/dist/log/index.js')
  const { build } = await import('vite')
  await build({
    configFile: false,
    logLevel: 'error',
    build: {
      ssr: resolve('shared-calc/src/log/index.ts'),
      outDir: bundle,
      emptyOutDir: true,
      rolldownOptions: { output: { entryFileNames: 'reader.mjs' } },
    },
  })
  return join(bundle, 'reader.mjs')
}

// The reader is run in a process of its own: only so is its memory its own.
beforeAll(async () => {
  const reader = await builtReader()
  const folder = await mkdtemp(join(tmpdir(), 'hostile-'))
  try {
    for (const [index, { make, fileName }] of hostileFiles.entries()) {
      const own = join(folder, String(index).padStart(3, '0'))
      await mkdir(own)
      await writeFile(join(own, fileName), make())
    }
    const child = resolve('test/log/hostile/child.mjs')
    const { stdout } = await run(process.execPath, ['--expose-gc', child, reader, folder])
    endings = stdout
      .trim()
      .split('\n')
      .map((line) => JSON.parse(line) as Ending)
  } finally {
    await rm(folder, { recursive: true, force: true })
  }
  // Its limits are in processor time: how long a busy machine needs for it says nothing.
}, 600_000)

describe('a hostile or foreign file', () => {
  it.each(hostileFiles.map((file, index) => ({ ...file, index })))(
    '$name ends in a clear error within 2 s of work and 300 MB',
    ({ index, code, says }) => {
      const { problems = [], seconds, yard = 0, megabytes } = endings[index] ?? {}
      expect(problems).toMatchObject([{ code }])
      expect(problems[0]?.message).toMatch(says)
      // Processor time, and more of it where the machine is just now slower than the one the limit was set on.
      expect(seconds).toBeLessThan(2 * Math.max(1, yard / USUAL_YARD_s))
      expect(megabytes).toBeLessThan(300)
    },
  )
})
