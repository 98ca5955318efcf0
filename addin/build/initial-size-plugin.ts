import { gzipSync } from 'node:zlib'
import type { Plugin, Rolldown } from 'vite'

/**
 * Prints, for each page, the JavaScript a browser fetches before the pane is usable (entry and its static
 * imports, gzip), and fails the build above the limit.
 * @param limitKb limit for one page, in kB of 1000 bytes
 */
export function initialSize(limitKb: number): Plugin {
  return {
    name: 'draughtbook:initial-size',
    apply: 'build',
    writeBundle(_options, bundle) {
      const entries = Object.values(bundle).filter(
        (part): part is Rolldown.OutputChunk => part.type === 'chunk' && part.isEntry,
      )
      for (const entry of entries) {
        const files = staticGraph(entry.fileName, bundle)
        const kb = files.reduce((sum, file) => sum + gzipKb(bundle[file]), 0)
        console.log(
          `initial JavaScript of ${entry.name}: ${kb.toFixed(1)} kB gzip in ${files.length} file(s), limit ${limitKb}`,
        )
        if (kb > limitKb)
          this.error(`initial JavaScript of ${entry.name} is ${kb.toFixed(1)} kB gzip, above ${limitKb} kB`)
      }
    },
  }
}

function staticGraph(start: string, bundle: Rolldown.OutputBundle): string[] {
  const seen = new Set<string>()
  const walk = (file: string): void => {
    const part = bundle[file]
    if (seen.has(file) || part?.type !== 'chunk') return
    seen.add(file)
    part.imports.forEach(walk)
  }
  walk(start)
  return [...seen]
}

const gzipKb = (part: Rolldown.OutputChunk | Rolldown.OutputAsset | undefined): number =>
  part?.type === 'chunk' ? gzipSync(part.code).length / 1000 : 0
