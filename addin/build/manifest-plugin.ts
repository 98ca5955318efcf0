import type { Plugin } from 'vite'
import { baseAddress } from '../../manifests/src/definition.ts'
import { xmlManifest } from '../../manifests/src/xml.ts'
import { ANY_ADDRESS } from '../../service/src/excel/excel.ts'

/** Emits manifest.xml, in which the service that serves the pane puts its own address. */
export function manifest(): Plugin {
  return {
    name: 'draughtbook:manifest',
    apply: 'build',
    generateBundle() {
      const source = xmlManifest(baseAddress(ANY_ADDRESS))
      this.emitFile({ type: 'asset', fileName: 'manifest.xml', source })
    },
  }
}
