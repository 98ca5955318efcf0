import { constants } from 'node:fs'
import { access, readFile, stat } from 'node:fs/promises'
import { dirname, extname } from 'node:path'
import { InputError } from '@draughtbook/shared-calc'
import { openLog, type ReportKind, reportKind } from '@draughtbook/shared-calc/log'
import { cannotWrite, UsageError } from './errors.js'

/**
 * Checks the path of a report before the work on it begins: its ending, its folder, and that it replaces nothing but an earlier
 * report of the same kind. Anything else there may be a log or an archived test, and would be lost.
 * @throws UsageError
 */
export async function checkOutput(
  path: string,
  kind: ReportKind,
  endings: readonly string[] = ['.xlsx'],
): Promise<void> {
  if (!endings.includes(extname(path).toLowerCase()))
    throw new UsageError(`--out must name ${anOf(endings)} file, not ${path}`)
  await access(dirname(path), constants.W_OK).catch((error: unknown) => {
    throw cannotWrite(path, error)
  })
  await refuseOther(path, kind)
}

/** Throws UsageError if a file is there that is no earlier report of this kind. */
export async function refuseOther(path: string, kind: ReportKind): Promise<void> {
  const there = await stat(path).catch(() => undefined)
  if (there === undefined) return
  if (there.isDirectory()) throw new UsageError(`${path} cannot be written: it is a folder, not a file`)
  // An empty file, as scripts make one beforehand, holds nothing that could be lost.
  if (there.isFile() && there.size === 0) return
  if (await isOfKind(await readFile(path), path, kind)) return
  throw new UsageError(
    `${path} already exists and is not a Draughtbook ${WORDS[kind]}; choose another name, or move that file first`,
  )
}

/** "an .xlsx or a .csv" */
const anOf = (endings: readonly string[]): string =>
  endings.map((one) => `${one.startsWith('.x') ? 'an' : 'a'} ${one}`).join(' or ')

const WORDS: Readonly<Record<ReportKind, string>> = {
  register: 'register',
  're-run': 're-run',
  building: 'workbook of a building',
  stages: 'workbook of stages',
  plan: 'test plan',
  'take-off': 'take-off',
}

async function isOfKind(bytes: Uint8Array, path: string, kind: ReportKind): Promise<boolean> {
  try {
    const grid = openLog(bytes, path)
    if (grid.kind === 'workbook' || kind !== 'register') return reportKind(grid) === kind
    return (await import('@draughtbook/shared-calc/register')).isRegisterCsv(grid)
  } catch (error) {
    if (error instanceof InputError) return false
    throw error
  }
}
