import { fileURLToPath } from 'node:url'
import { Piscina } from 'piscina'
import { errorCode } from '../files/file-fault.js'
import type { ArchiveResult, ArchiveTask, FileOrder } from './archive-tasks.js'
import type { FileRunner } from './run-archive.js'
import type { ThreadOrder } from './thread-entry.js'

export interface ThreadOptions {
  readonly workers: number
  /** Memory of one worker, MB. */
  readonly memory_MB?: number
  /** Longest time for one file. */
  readonly deadline_ms?: number
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
  entry = ENTRY,
}: ThreadOptions): FileRunner & { readonly pool: Piscina } {
  const pool = new Piscina({
    filename: entry,
    minThreads: workers,
    maxThreads: workers,
    resourceLimits: { maxOldGenerationSizeMb: memory_MB },
  })
  // A worker that dies with nothing to do is replaced by the pool; without a listener it would end the process.
  pool.on('error', () => undefined)
  const attempt = async (order: ThreadOrder, signal: AbortSignal, tries: number): Promise<unknown> => {
    const late = AbortSignal.timeout(deadline_ms)
    try {
      return await pool.run(order, { signal: AbortSignal.any([signal, late]) })
    } catch (error) {
      if (late.aborted && !signal.aborted)
        throw new Error(`it took longer than ${deadline_ms / 1000} s`, { cause: error })
      if (errorCode(error) === 'ERR_WORKER_OUT_OF_MEMORY')
        throw new Error(`it needs more than ${memory_MB} MB of memory`, { cause: error })
      const died = error instanceof Error && error.message.startsWith('worker exited')
      if (!died || signal.aborted) throw error
      if (tries + 1 >= TRIES) throw new Error(`its worker died ${TRIES} times`, { cause: error })
      return attempt(order, signal, tries + 1)
    }
  }
  return {
    pool,
    // One more than there are threads, so that none waits for the next job to be handed over.
    atOnce: workers + 1,
    run: <Task extends ArchiveTask>(task: Task, order: FileOrder, signal: AbortSignal) =>
      attempt({ task, order }, signal, 0) as Promise<ArchiveResult<Task>>,
    close: () => pool.destroy(),
  }
}
