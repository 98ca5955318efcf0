import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { onTestFinished } from 'vitest'
import { run } from '../../../service/src/cli/run'

/** Runs one command line in this process, with what it wrote. */
export async function commandLine(...args: string[]) {
  const out: string[] = []
  const err: string[] = []
  const code = await run(args, {
    out: (text) => void out.push(text),
    err: (line) => void err.push(line),
    watched: false,
  })
  return { code, out: out.join('\n'), err }
}

/** A folder of its own for a test, removed afterwards. */
export async function folder(): Promise<string> {
  const path = await mkdtemp(join(tmpdir(), 'draughtbook-test-'))
  onTestFinished(() => rm(path, { recursive: true, force: true, maxRetries: 10 }))
  return path
}
