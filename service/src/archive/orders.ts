import { dirname } from 'node:path'
import type { Layout } from '@draughtbook/shared-calc/log'
import { layoutsFor, readLayout } from '../library/layouts.js'
import type { FileOrder } from './archive-tasks.js'

/** How signatures are judged. */
export interface SignatureWish {
  /** Public keys, PEM. */
  readonly keys?: readonly string[]
  readonly requireSignature?: boolean
}

/**
 * One order for each file, with the layouts that may fit it: those named, else those beside it, of the library and
 * built in. Each folder is looked through once.
 * @throws InputError when a layout file cannot be read
 */
export async function ordersFor(
  files: readonly string[],
  {
    layouts: named = [],
    keys = [],
    requireSignature = false,
  }: { layouts?: readonly string[] } & SignatureWish = {},
): Promise<FileOrder[]> {
  const given = await Promise.all(named.map(readLayout))
  const byFolder = new Map<string, Promise<Layout[]>>()
  const layoutsOf = (file: string): Promise<Layout[]> => {
    const folder = dirname(file)
    const known = byFolder.get(folder) ?? layoutsFor(file)
    byFolder.set(folder, known)
    return known
  }
  return Promise.all(
    files.map(async (file) => ({
      path: file,
      file,
      layouts: given.length > 0 ? given : await layoutsOf(file),
      keys,
      ...(requireSignature && { requireSignature }),
    })),
  )
}
