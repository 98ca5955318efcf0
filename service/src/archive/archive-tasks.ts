import { type Layout, LIMITS } from '@draughtbook/shared-calc/log'
import { type ReadLines, type ReadRecords, readLines, readRecords } from '@draughtbook/shared-calc/register'
import { type RerunTest, rerunFile, unreadable } from '@draughtbook/shared-calc/rerun'
import { fileFault } from '../files/file-fault.js'
import { NotReadable, readRegular } from '../files/read-regular.js'
import { verifierOf } from '../signature/sign.js'

/** One file of an archive, as a job: everything in it can be sent to another thread or machine. */
export interface FileOrder {
  /** Where the file lies. */
  readonly path: string
  /** What it is called in the result. */
  readonly file: string
  readonly layouts: readonly Layout[]
  /** Public keys that signatures are checked against, PEM. */
  readonly keys: readonly string[]
  /** Whether a file that is not signed with one of them fails. */
  readonly requireSignature?: boolean
}

/** The jobs on one file. They read and change nothing else, so doing one twice does no harm. */
export const archiveTasks = {
  register: async ({ path, file, layouts }: FileOrder): Promise<ReadLines> => {
    const bytes = await bytesOf(path)
    if (typeof bytes === 'string') return { lines: [], leftOut: [{ file, why: bytes }] }
    return readLines(bytes, file, layouts)
  },
  records: async ({ path, file, layouts }: FileOrder): Promise<ReadRecords> => {
    const bytes = await bytesOf(path)
    if (typeof bytes === 'string') return { records: [], leftOut: [{ file, why: bytes }] }
    return readRecords(bytes, file, layouts)
  },
  rerun: async ({ path, file, layouts, keys, requireSignature = false }: FileOrder): Promise<RerunTest[]> => {
    const bytes = await bytesOf(path)
    if (typeof bytes === 'string') return [unreadable(file, bytes)]
    return rerunFile(bytes, file, {
      layouts,
      requireSignature,
      ...(keys.length > 0 && { verify: verifierOf(keys) }),
    })
  },
}

export type ArchiveTask = keyof typeof archiveTasks
export type ArchiveResult<Task extends ArchiveTask> = Awaited<ReturnType<(typeof archiveTasks)[Task]>>

/** What is in the result for a file that no worker could finish. */
export const setAside: {
  readonly [Task in ArchiveTask]: (file: string, why: string) => ArchiveResult<Task>
} = {
  register: (file, why) => ({ lines: [], leftOut: [{ file, why }] }),
  records: (file, why) => ({ records: [], leftOut: [{ file, why }] }),
  rerun: (file, why) => [unreadable(file, why)],
}

/** The file's bytes, or why they cannot be read. */
async function bytesOf(path: string): Promise<Uint8Array | string> {
  try {
    return await readRegular(path, LIMITS.fileBytes)
  } catch (error) {
    if (error instanceof NotReadable) return error.message
    const fault = fileFault(error)
    if (fault === undefined) throw error
    return fault
  }
}
