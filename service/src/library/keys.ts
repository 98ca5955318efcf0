import { readdir } from 'node:fs/promises'
import { join } from 'node:path'
import { fileFault } from '../files/file-fault.js'
import { NotReadable, readRegular } from '../files/read-regular.js'
import { publicKeyOf } from '../signature/keys.js'
import { LIBRARY_VARIABLE } from './layouts.js'
import { ENTRY_BYTES } from './read-entry.js'

/** Folder of the library that holds public keys, `*.pub` in PEM form. */
const FOLDER = 'keys'

/** The public keys of the firm's library; none where there is no library or it holds none. Throws RangeError naming the file that is not a key. */
export async function libraryKeys(
  library: string | undefined = process.env[LIBRARY_VARIABLE],
): Promise<string[]> {
  if (!library) return []
  const folder = join(library, FOLDER)
  const names = await readdir(folder).catch(() => [])
  const files = names.filter((name) => name.endsWith('.pub')).sort()
  return Promise.all(files.map((name) => readKeyFile(join(folder, name))))
}

/** A public key as text, checked. Throws RangeError naming the file. */
export async function readKeyFile(path: string): Promise<string> {
  try {
    const pem = new TextDecoder().decode(await readRegular(path, ENTRY_BYTES))
    publicKeyOf(pem)
    return pem
  } catch (error) {
    const why = error instanceof RangeError || error instanceof NotReadable ? error.message : fileFault(error)
    if (why === undefined) throw error
    throw new RangeError(`${path}: ${why}`, { cause: error })
  }
}
