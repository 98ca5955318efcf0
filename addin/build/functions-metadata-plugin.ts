import type { Plugin } from 'vite'
import { functionsJson } from '../src/functions/metadata.ts'

/** Emits functions.json, which the manifests point to, from the typed table of spreadsheet functions. */
export function functionsMetadata(): Plugin {
  return {
    name: 'draughtbook:functions-metadata',
    apply: 'build',
    generateBundle() {
      this.emitFile({ type: 'asset', fileName: 'functions.json', source: functionsJson() })
    },
  }
}
