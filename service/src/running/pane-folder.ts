import { existsSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'

/** The built pane: in a package of the service it lies in it, in a checkout beside it. */
export const PANE: string = ['../../../addin/dist', '../../pane']
  .map((folder) => fileURLToPath(new URL(folder, import.meta.url)))
  .reduce((checkout, packed) => (paneIsBuilt(packed) ? packed : checkout))

/** Whether there is a pane to serve. */
export function paneIsBuilt(folder: string = PANE): boolean {
  return existsSync(join(folder, 'index.html'))
}
