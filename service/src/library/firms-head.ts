import { join } from 'node:path'
import { InputError } from '@draughtbook/shared-calc'
import { errorCode } from '../files/file-fault.js'
import { NotReadable, readRegular } from '../files/read-regular.js'
import { readJson } from '../json/read-json.js'
import { LIBRARY_VARIABLE } from './layouts.js'
import { ENTRY_BYTES } from './read-entry.js'

/** Folder of the library with `firm.json` (`{ "name": … }`) and the logo, all optional. */
const FOLDER = 'firm'
const LOGOS = ['logo.png', 'logo.jpg', 'logo.jpeg'] as const
/** More than a logo may have; the workbook's own, smaller limit becomes a finding. */
const MOST_BYTES = 8 * 1024 * 1024

/**
 * The firm's name and logo for the head of the summary; undefined where the library has none.
 * Throws RangeError naming the file that cannot be used.
 */
export async function firmsHead(
  library: string | undefined = process.env[LIBRARY_VARIABLE],
): Promise<{ name?: string; logo?: Uint8Array } | undefined> {
  if (!library) return undefined
  const about = await bytesOf(join(library, FOLDER, 'firm.json'), ENTRY_BYTES)
  const name = about && nameIn(about, join(library, FOLDER, 'firm.json'))
  for (const file of LOGOS) {
    const logo = await bytesOf(join(library, FOLDER, file), MOST_BYTES)
    if (logo) return { ...(name !== undefined && { name }), logo }
  }
  return name === undefined ? undefined : { name }
}

async function bytesOf(path: string, most: number): Promise<Uint8Array | undefined> {
  try {
    return await readRegular(path, most)
  } catch (error) {
    if (errorCode(error) === 'ENOENT' || errorCode(error) === 'ENOTDIR') return undefined
    if (error instanceof NotReadable) throw new RangeError(`${path}: ${error.message}`, { cause: error })
    throw error
  }
}

function nameIn(bytes: Uint8Array, path: string): string {
  const found: unknown = readJson(new TextDecoder('utf-8').decode(bytes))
  const name = found !== null && typeof found === 'object' && 'name' in found ? found.name : undefined
  if (typeof name !== 'string' || name.trim() === '' || name.length > 200)
    throw new InputError([{ path: 'name', message: `${path}: "name" must be a text of 1 to 200 characters` }])
  return name.trim()
}
