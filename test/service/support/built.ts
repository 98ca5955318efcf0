import { readdir, stat } from 'node:fs/promises'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'

const SERVICE = fileURLToPath(new URL('../../../service/', import.meta.url))

/** Entry of the built command line. */
export const BIN = join(SERVICE, 'bin', 'draughtbook.mjs')
/** Entries of threads: they run what ships, the bundle, which takes half the processor time to load that single modules take. */
export const WORKER = join(SERVICE, 'dist', 'bundle', 'worker.js')
export const EVALUATOR_THREAD = join(SERVICE, 'dist', 'bundle', 'evaluator-thread.js')

/** Rejects unless the service is built from its present sources. */
export async function requireBuild(): Promise<void> {
  const [compiled, bundled] = await Promise.all(
    ['tsconfig.tsbuildinfo', 'dist/bundle/main.js'].map((file) =>
      stat(join(SERVICE, file)).catch(() => undefined),
    ),
  )
  const sources = await readdir(join(SERVICE, 'src'), { recursive: true, withFileTypes: true })
  const times = await Promise.all(
    sources
      .filter((one) => one.isFile())
      .map(async (one) => (await stat(join(one.parentPath, one.name))).mtimeMs),
  )
  if (Math.max(...times) > Math.min(compiled?.mtimeMs ?? 0, bundled?.mtimeMs ?? 0))
    throw new Error('the service is not built, or older than its sources; run "npm run build"')
}
