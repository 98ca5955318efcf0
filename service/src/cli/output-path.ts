import { readFile, realpath } from 'node:fs/promises'
import { dirname, extname, join, parse } from 'node:path'
import { writeAtomically } from '../files/write-atomically.js'
import { cannotWrite, UsageError } from './errors.js'

export interface OutputWish {
  /** Path asked for with --out. */
  readonly out?: string | undefined
  readonly force?: boolean | undefined
  /** Path of the private key to sign with. */
  readonly sign?: string | undefined
}

/**
 * Where a summary goes: the path asked for, else beside the input as `<name>-summary.xlsx`. Throws UsageError when it
 * would be the input itself or no .xlsx.
 */
export async function outputPath(input: string, wish: OutputWish, suffix = ''): Promise<string> {
  const { dir, name } = parse(input)
  const path = wish.out ?? join(dir, `${name}${suffix}-summary.xlsx`)
  if (extname(path).toLowerCase() !== '.xlsx')
    throw new UsageError(`--out must name an .xlsx file, not ${path}`)
  if ((await where(path)) === (await where(input)))
    throw new UsageError(`--out names the input itself (${input}); name another file`)
  return path
}

/**
 * Whether the file may be written. At a path that the user named, any file of its kind is replaced; at one we chose, only one of
 * the same test, so that no log and no archived workbook is lost. Throws UsageError otherwise.
 * @param old - tells from the bytes of the old file whether it is of its kind, and of the same test
 */
export async function guardOld(
  path: string,
  wish: OutputWish,
  old: {
    readonly ofKind: (bytes: Uint8Array) => boolean
    readonly ofSameTest: (bytes: Uint8Array) => boolean
    /** "Draughtbook summary" */
    readonly kind: string
  },
): Promise<void> {
  if (wish.force) return
  const bytes = await readFile(path).catch(() => undefined)
  // An empty file, as scripts make one beforehand, holds nothing that could be lost.
  if (bytes === undefined || bytes.length === 0) return
  if (wish.out === undefined && !old.ofSameTest(bytes))
    throw new UsageError(
      `${path} already exists with other content; use --force to replace it, or choose another file with --out`,
    )
  if (wish.out !== undefined && !old.ofKind(bytes))
    throw new UsageError(
      `${path} already exists and is not a ${old.kind}; use --force to replace it, or choose another name`,
    )
}

async function where(path: string): Promise<string> {
  const folder = await realpath(dirname(path)).catch(() => dirname(path))
  return realpath(path).catch(() => join(folder, parse(path).base))
}

/** Writes a workbook at a path that was checked. Throws UsageError when it cannot be written. */
export async function writeWorkbook(path: string, make: () => Promise<Uint8Array>): Promise<void> {
  const bytes = await make()
  try {
    await writeAtomically(path, bytes)
  } catch (error) {
    throw cannotWrite(path, error)
  }
}
