import { existsSync } from 'node:fs'
import { readFile } from 'node:fs/promises'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { ANY_ADDRESS } from '../excel/excel.js'

/** The built pane: inside the service’s package, or next to it in a checkout. */
export const PANE: string = ['../../../addin/dist', '../../pane']
  .map((folder) => fileURLToPath(new URL(folder, import.meta.url)))
  .reduce((checkout, packed) => (paneIsBuilt(packed) ? packed : checkout))

/** Whether there is a pane to serve. */
export function paneIsBuilt(folder: string = PANE): boolean {
  return existsSync(join(folder, 'index.html'))
}

/**
 * The pane's manifest (XML) for the service at one address.
 * @param folder - the built pane
 * @param address - where Excel reaches the service, https
 * @throws the system's error when the pane is not built
 */
export async function manifestFor(folder: string, address: string): Promise<string> {
  const built = await readFile(join(folder, 'manifest.xml'), 'utf8')
  return built.replaceAll(ANY_ADDRESS, new URL(address).origin)
}
