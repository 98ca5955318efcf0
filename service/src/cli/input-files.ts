import { readdir, stat } from 'node:fs/promises'
import { extname, join } from 'node:path'
import { UsageError } from './errors.js'

const LOGS = new Set(['.xlsx', '.xlsm', '.ods', '.csv', '.txt', '.tsv'])

/**
 * Files as named; of a folder its logs, in order of their names. Left out there: summaries beside them, and what a
 * spreadsheet program leaves while a file is open.
 * @throws UsageError for a folder without a log
 */
export async function inputFiles(given: readonly string[]): Promise<string[]> {
  const files: string[] = []
  for (const path of given) {
    const isFolder = await stat(path).then(
      (one) => one.isDirectory(),
      () => false,
    )
    if (!isFolder) {
      files.push(path)
      continue
    }
    const names = (await readdir(path))
      .filter((name) => LOGS.has(extname(name).toLowerCase()) && !/^[~.]|-summary\.xlsx$/.test(name))
      .sort()
    if (names.length === 0)
      throw new UsageError(`the folder ${path} holds no test log (.xlsx, .xlsm, .ods, .csv)`)
    files.push(...names.map((name) => join(path, name)))
  }
  return files
}
