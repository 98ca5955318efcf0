import { readdir, stat } from 'node:fs/promises'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'

const SERVICE = fileURLToPath(new URL('../../../service/', import.meta.url))

/** Entry of the built command line. */
export const BIN = join(SERVICE, 'bin', 'draughtbook.mjs')
/** Entries of threads: threads run built code only. */
export const WORKER = join(SERVICE, 'dist', 'jobs', 'worker.js')
export const EVALUATOR_THREAD = join(SERVICE, 'dist', 'jobs', 'evaluator-thread.js')

/** Rejects unless the service is built from its present sources. */
export async function requireBuild(): Promise<void> {
  const built = await stat(join(SERVICE, 'tsconfig.tsbuildinfo')).catch(() => undefined)
  const sources = await readdir(join(SERVICE, 'src'), { recursive: true, withFileTypes: true })
  const times = await Promise.all(
    sources
      .filter((one) => one.isFile())
      .map(async (one) => (await stat(join(one.parentPath, one.name))).mtimeMs),
  )
  if (!built || Math.max(...times) > built.mtimeMs)
    throw new Error('the service is not built, or older than its sources; run "npm run build"')
}
