import { existsSync } from 'node:fs'
import { readdir } from 'node:fs/promises'
import { basename, dirname, join } from 'node:path'
import { didYouMean, nearest } from '@draughtbook/shared-calc'
import { errorCode, fileFault } from './file-fault.js'

/** Plain words for a path that cannot be opened; of one that is not there, with the nearest name in its folder. */
export async function faultOfPath(path: string, error: unknown): Promise<string | undefined> {
  // A folder was wanted, and the path itself is a file.
  if (errorCode(error) === 'ENOTDIR' && existsSync(path)) return 'it is a file, not a folder'
  const fault = fileFault(error)
  if (fault === undefined || errorCode(error) !== 'ENOENT') return fault
  const folder = dirname(path)
  const names = await readdir(folder).catch(() => undefined)
  if (names === undefined) return `there is no folder ${folder}`
  const near = nearest(basename(path), names.slice(0, MOST_NAMES))
  return `${fault}${didYouMean(near && join(folder, near))}`
}

/** Of a folder with more files, no name is proposed from those beyond. */
const MOST_NAMES = 2000
