import { fileURLToPath } from 'node:url'
import { Piscina } from 'piscina'
import { errorCode } from '../files/file-fault.js'
import { inThread, THREADS, TooLong } from '../jobs/in-thread.js'
import type { ArchiveResult, ArchiveTask, FileOrder } from './archive-tasks.js'
import type { FileRunner } from './run-archive.js'
import type { ThreadOrder } from './thread-entry.js'

export interface ThreadOptions {
  readonly workers: number
  /** Memory of one worker, MB. */
  readonly memory_MB?: number
  /** Longest time for one file. */
  readonly deadline_ms?: number
  /** Threads kept while there is nothing to do; as many as `workers` where it is not given. */
  readonly idle?: number
  /** File of the worker's entry. */
  readonly entry?: string
}

const ENTRY = fileURLToPath(new URL('./thread-entry.js', import.meta.url))
/** How often a file is tried when its worker dies. */
export const TRIES = 3

/**
 * Worker threads for archives. A file that takes too long or needs too much memory ends its worker, not the run; one
 * that kills three workers is set aside.
 */
export function startThreads({
  workers,
  memory_MB = 512,
  deadline_ms = 60_000,
  idle = workers,
  entry = ENTRY,
}: ThreadOptions): FileRunner & { readonly pool: Piscina } {
  const pool = new Piscina({
    filename: entry,
    minThreads: idle,
    ...THREADS,
    maxThreads: workers,
    // Reading a workbook allocates much short-lived memory. With less than this, copying what is still in use takes up to a third of the
    // time of a re-run of workbooks that another program has saved (measured: 34 s with 32 MB, 24 to 34 s with 64 MB, 27 s with 128 MB, for
    // fifty of them on two threads of a busy machine); a thread takes some 30 MB more for it.
    resourceLimits: { maxOldGenerationSizeMb: memory_MB, maxYoungGenerationSizeMb: 64 },
  })
  // A worker that dies with nothing to do is replaced by the pool; without a listener it would end the process.
  pool.on('error', () => undefined)
  const attempt = async (thread: ThreadOrder, signal: AbortSignal, tries: number): Promise<unknown> => {
    try {
      return await inThread(pool, thread, signal, deadline_ms).result
    } catch (error) {
      if (error instanceof TooLong)
        throw new Error(`it took longer than ${deadline_ms / 1000} s`, { cause: error })
      if (errorCode(error) === 'ERR_WORKER_OUT_OF_MEMORY')
        throw new Error(`it needs more than ${memory_MB} MB of memory`, { cause: error })
      const died = error instanceof Error && error.message.startsWith('worker exited')
      if (!died || signal.aborted) throw error
      if (tries + 1 >= TRIES) throw new Error(`processing it crashed ${TRIES} times`, { cause: error })
      return attempt(thread, signal, tries + 1)
    }
  }
  return {
    pool,
    // One more than there are threads, so that no thread waits for its next job.
    atOnce: workers + 1,
    run: <Task extends ArchiveTask>(task: Task, order: FileOrder, signal: AbortSignal) =>
      attempt({ task, order }, signal, 0) as Promise<ArchiveResult<Task>>,
    close: () => pool.destroy(),
  }
}
