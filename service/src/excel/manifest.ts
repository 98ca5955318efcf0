import { readFile } from 'node:fs/promises'
import { join } from 'node:path'
import { ANY_ADDRESS } from './excel.js'

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
