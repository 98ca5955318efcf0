import { fileURLToPath } from 'node:url'
import { MessageChannel, type MessagePort } from 'node:worker_threads'
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
    // Reading a workbook leaves much litter. With V8's small default two threads spend half as much again on collecting
    // it as one does (measured); with 32 MB they do not.
    resourceLimits: { maxOldGenerationSizeMb: memory_MB, maxYoungGenerationSizeMb: 32 },
  })
  // A worker that dies with nothing to do is replaced by the pool; without a listener it would end the process.
  pool.on('error', () => undefined)
  const attempt = async (
    task: ArchiveTask,
    order: FileOrder,
    signal: AbortSignal,
    tries: number,
  ): Promise<unknown> => {
    const late = deadline(deadline_ms)
    try {
      const thread: ThreadOrder = { task, order, begun: late.begun }
      return await pool.run(thread, {
        signal: AbortSignal.any([signal, late.signal]),
        transferList: [late.begun],
      })
    } catch (error) {
      if (late.signal.aborted && !signal.aborted)
        throw new Error(`it took longer than ${deadline_ms / 1000} s`, { cause: error })
      if (errorCode(error) === 'ERR_WORKER_OUT_OF_MEMORY')
        throw new Error(`it needs more than ${memory_MB} MB of memory`, { cause: error })
      const died = error instanceof Error && error.message.startsWith('worker exited')
      if (!died || signal.aborted) throw error
      if (tries + 1 >= TRIES) throw new Error(`processing it crashed ${TRIES} times`, { cause: error })
      return attempt(task, order, signal, tries + 1)
    } finally {
      late.end()
    }
  }
  return {
    pool,
    // One more than there are threads, so that none waits for the next job to be handed over.
    atOnce: workers + 1,
    run: <Task extends ArchiveTask>(task: Task, order: FileOrder, signal: AbortSignal) =>
      attempt(task, order, signal, 0) as Promise<ArchiveResult<Task>>,
    close: () => pool.destroy(),
  }
}

/** A signal that falls some time after the thread said it has begun. */
function deadline(after_ms: number): { begun: MessagePort; signal: AbortSignal; end(): void } {
  const { port1, port2 } = new MessageChannel()
  const late = new AbortController()
  let timer: NodeJS.Timeout | undefined
  port1.once('message', () => {
    timer = setTimeout(() => late.abort(), after_ms)
  })
  return {
    begun: port2,
    signal: late.signal,
    end: () => {
      clearTimeout(timer)
      port1.close()
    },
  }
}
