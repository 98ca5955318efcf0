import { lstat, readdir, stat } from 'node:fs/promises'
import { basename, extname, join } from 'node:path'
import type { LeftOut } from '@draughtbook/shared-calc/register'
import { faultOfPath } from '../files/near-file.js'

/** What is under the paths given: files to read, and others with the reason why not. */
export interface FoundFiles {
  readonly files: readonly string[]
  readonly others: readonly LeftOut[]
}

const READ = new Set(['.xlsx', '.xlsm', '.ods', '.csv', '.tsv'])

/** All files under folders, in order of their names, each once. A path that does not exist is among the others. */
export async function findFiles(paths: readonly string[]): Promise<FoundFiles> {
  const files = new Set<string>()
  const others: LeftOut[] = []
  for (const path of paths) await add(path, true, files, others)
  return { files: [...files], others }
}

async function add(path: string, named: boolean, files: Set<string>, others: LeftOut[]): Promise<void> {
  try {
    // A link that is named is meant; one that is in a folder may lead anywhere.
    const found = await (named ? stat(path) : lstat(path))
    if (found.isSymbolicLink()) {
      others.push({
        file: path,
        why: 'links inside folders are not followed',
        expected: true,
        kind: 'link',
      })
    } else if (found.isDirectory()) {
      const names = await readdir(path)
      for (const name of names.sort(byName)) await add(join(path, name), false, files, others)
    } else if (!found.isFile()) {
      others.push({ file: path, why: 'it is a pipe or a device, not a file' })
    } else {
      const why = named ? undefined : notRead(path)
      if (why === undefined) files.add(path)
      else others.push({ file: path, ...why, expected: true })
    }
  } catch (error) {
    const fault = await faultOfPath(path, error)
    if (fault === undefined) throw error
    others.push({ file: path, why: fault })
  }
}

const collator = new Intl.Collator('en', { numeric: true })
const byName = (a: string, b: string): number => collator.compare(a, b) || (a < b ? -1 : 1)

function notRead(path: string): Pick<LeftOut, 'why' | 'kind'> | undefined {
  const name = basename(path)
  if (name.startsWith('~$'))
    return { why: 'temporary file of an open workbook', kind: 'temporary or hidden file' }
  if (name.startsWith('.')) return { why: 'hidden file', kind: 'temporary or hidden file' }
  if (!READ.has(extname(name).toLowerCase()))
    return { why: 'not a workbook or a CSV file', kind: 'other format' }
  return undefined
}
