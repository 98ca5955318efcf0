import { cp, mkdtemp, readdir, rm, stat } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { build } from 'vite'

const at = (relative: string) => fileURLToPath(new URL(`../../../${relative}`, import.meta.url))
const BUILT = at('addin/dist')

/** Everything the pane is built from. */
const SOURCES = [
  ...['src', 'build', 'public', 'index.html', 'pane.html', 'vite.config.ts'].map((name) => `addin/${name}`),
  'shared-calc/src',
  'shared-calc/source-aliases.mjs',
  'manifests/src',
  'service/src/excel',
  'package-lock.json',
].map(at)

/**
 * The pane as it is shipped. `npm run build` has built it before all tests run; it is built anew, in a folder of its own, only
 * where a source has changed since.
 */
export async function buildPane(): Promise<{ folder: string; remove: () => Promise<void> }> {
  if (await isCurrent()) return { folder: BUILT, remove: async () => undefined }
  const folder = await mkdtemp(join(tmpdir(), 'draughtbook-pane-'))
  await build({
    configFile: at('addin/vite.config.ts'),
    logLevel: 'silent',
    build: { outDir: folder, emptyOutDir: true },
  })
  return { folder, remove: () => rm(folder, { recursive: true, force: true }) }
}

/** The same files once more, in a folder of their own. */
export async function copyOf({ folder: built, remove }: Awaited<ReturnType<typeof buildPane>>) {
  const folder = await mkdtemp(join(tmpdir(), 'draughtbook-pane-'))
  await cp(built, folder, { recursive: true })
  await remove()
  return { folder, remove: () => rm(folder, { recursive: true, force: true }) }
}

async function isCurrent(): Promise<boolean> {
  // The build writes the service worker last.
  const built = await stat(join(BUILT, 'service-worker.js')).catch(() => undefined)
  return built !== undefined && Math.max(...(await Promise.all(SOURCES.map(newest)))) < built.mtimeMs
}

/** When a file, or the newest of a folder, was changed. */
async function newest(path: string): Promise<number> {
  const { mtimeMs } = await stat(path)
  const names = await readdir(path, { recursive: true }).catch(() => [])
  const times = await Promise.all(names.map(async (name) => (await stat(join(path, name))).mtimeMs))
  return Math.max(mtimeMs, ...times)
}
