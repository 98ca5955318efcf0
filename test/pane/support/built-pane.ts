import { mkdtemp } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { build } from 'vite'

const CONFIG = fileURLToPath(new URL('../../../addin/vite.config.ts', import.meta.url))

/** Builds the pane as it is shipped, into a folder of its own. */
export async function buildPane(): Promise<string> {
  const folder = await mkdtemp(join(tmpdir(), 'draughtbook-pane-'))
  await build({ configFile: CONFIG, logLevel: 'silent', build: { outDir: folder, emptyOutDir: true } })
  return folder
}
