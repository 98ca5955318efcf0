import { gzipSync } from 'node:zlib'
import type { Plugin, Rolldown } from 'vite'

type Bundle = Rolldown.OutputBundle

/**
 * Prints, for each page, the JavaScript a browser fetches before the pane is usable (the page's scripts and their
 * static imports, gzip), and fails the build above the limit.
 * @param limitKb limit for one page, in kB of 1000 bytes
 */
export function initialSize(limitKb: number): Plugin {
  return {
    name: 'draughtbook:initial-size',
    apply: 'build',
    writeBundle: {
      order: 'post',
      handler(_options, bundle) {
        for (const page of Object.keys(bundle).filter((name) => name.endsWith('.html'))) {
          const files = scriptsOf(page, bundle)
          const kb = files.reduce((sum, file) => sum + gzipKb(bundle[file]), 0)
          this.info(
            `initial JavaScript of ${page}: ${kb.toFixed(1)} kB gzip in ${files.length} file(s); limit ${limitKb} kB`,
          )
          if (files.length === 0 || kb > limitKb)
            this.error(
              `initial JavaScript of ${page}: ${files.length} file(s), ${kb.toFixed(1)} kB, limit ${limitKb}`,
            )
        }
      },
    },
  }
}

function scriptsOf(page: string, bundle: Bundle): string[] {
  const part = bundle[page]
  const html = part?.type === 'asset' ? String(part.source) : ''
  const linked = [...html.matchAll(/(?:src|href)="\.\/([^"]+\.js)"/g)].map(([, file = '']) => file)
  const seen = new Set<string>()
  const walk = (file: string): void => {
    const chunk = bundle[file]
    if (seen.has(file) || chunk?.type !== 'chunk') return
    seen.add(file)
    chunk.imports.forEach(walk)
  }
  linked.forEach(walk)
  return [...seen]
}

const gzipKb = (part: Bundle[string] | undefined): number =>
  part?.type === 'chunk' ? gzipSync(part.code).length / 1000 : 0
