import { readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { brotliCompressSync, gzipSync } from 'node:zlib'
import { afterWriting } from './after-writing.ts'

const KINDS = /\.(?:js|css|json|ttf|icc|svg)$/
/** Below it the headers of an answer weigh more than what is saved. */
const FEWEST_BYTES = 1024

/** Writes each larger asset once more as .br and .gz, so that the service need not compress it for every visitor. */
export const compressedAssets = () =>
  afterWriting('compressed-assets', (folder) => {
    const assets = join(folder, 'assets')
    for (const name of readdirSync(assets)) {
      if (!KINDS.test(name)) continue
      const path = join(assets, name)
      const bytes = readFileSync(path)
      if (bytes.length < FEWEST_BYTES) continue
      writeFileSync(`${path}.gz`, gzipSync(bytes, { level: 9 }))
      writeFileSync(`${path}.br`, brotliCompressSync(bytes))
    }
  })
