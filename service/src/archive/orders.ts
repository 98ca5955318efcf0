import { dirname } from 'node:path'
import { problemLine } from '@draughtbook/shared-calc'
import type { LeftOut } from '@draughtbook/shared-calc/register'
import { layoutsBeside, readLayout } from '../library/layouts.js'
import type { FileOrder } from './archive-tasks.js'

/** How signatures are judged. */
export interface SignatureWish {
  /** Public keys, PEM. */
  readonly keys?: readonly string[]
  readonly requireSignature?: boolean
}

export interface Orders {
  readonly orders: FileOrder[]
  /** Layouts that lie beside the files and cannot be used. */
  readonly broken: LeftOut[]
}

/**
 * One order for each file, with the layouts that may fit it: those named, else those beside it, of the library and
 * built in. Each folder is searched once.
 * @throws InputError when a layout that was named cannot be read
 */
export async function ordersFor(
  files: readonly string[],
  {
    layouts: named = [],
    keys = [],
    requireSignature = false,
  }: { layouts?: readonly string[] } & SignatureWish = {},
): Promise<Orders> {
  const given = await Promise.all(named.map(readLayout))
  const byFolder = new Map<string, ReturnType<typeof layoutsBeside>>()
  const layoutsOf = (file: string): ReturnType<typeof layoutsBeside> => {
    const folder = dirname(file)
    const known = byFolder.get(folder) ?? layoutsBeside(file)
    byFolder.set(folder, known)
    return known
  }
  const orders = await Promise.all(
    files.map(async (file) => ({
      path: file,
      file,
      layouts: given.length > 0 ? given : (await layoutsOf(file)).layouts,
      keys,
      ...(requireSignature && { requireSignature }),
    })),
  )
  const faults = (await Promise.all(byFolder.values())).flatMap((one) => one.faults)
  // The firm's own layouts are read for every folder: a broken one is reported once.
  const broken = new Map<string, LeftOut>()
  for (const { file, problem } of faults)
    broken.set(JSON.stringify([file, problem.path, problem.message]), {
      file,
      why: `the layout cannot be used: ${problemLine(problem)}`,
    })
  return { orders, broken: [...broken.values()] }
}
