import { setMaxListeners } from 'node:events'
import type { ArchiveResult, ArchiveTask, FileOrder } from './archive-tasks.js'

/** Runs jobs on files, wherever that is: on this thread, on others, on other machines. */
export interface FileRunner {
  /** Most jobs it takes at a time; more are held back, so that memory stays bounded. */
  readonly atOnce: number
  /** Aborted when nothing can be run any more; its reason says why. */
  readonly gone?: AbortSignal
  run<Task extends ArchiveTask>(
    task: Task,
    order: FileOrder,
    signal: AbortSignal,
  ): Promise<ArchiveResult<Task>>
  close(): Promise<void>
}

export interface ArchiveProgress {
  readonly done: number
  readonly of: number
}

export interface ArchiveRun {
  readonly signal?: AbortSignal
  readonly onProgress?: (progress: ArchiveProgress) => void
}

/** On this thread. */
export const runnerHere: FileRunner = {
  atOnce: 1,
  run: async <Task extends ArchiveTask>(task: Task, order: FileOrder): Promise<ArchiveResult<Task>> => {
    const { archiveTasks } = await import('./archive-tasks.js')
    return archiveTasks[task](order) as Promise<ArchiveResult<Task>>
  },
  close: async () => undefined,
}

/**
 * Does one job for each file, a few at a time. Results come in the order of the files, whatever finished first, so that
 * the same archive always gives the same report.
 * @throws the signal's reason when it is aborted, the runner's when it has gone
 */
export async function runArchive<Task extends ArchiveTask>(
  runner: FileRunner,
  task: Task,
  orders: readonly FileOrder[],
  { signal: wanted = new AbortController().signal, onProgress = () => undefined }: ArchiveRun = {},
): Promise<ArchiveResult<Task>[]> {
  const signal = runner.gone ? AbortSignal.any([wanted, runner.gone]) : wanted
  // Every running job listens to the signal; Node would report more than ten listeners as a leak.
  setMaxListeners(Math.max(1, runner.atOnce) * 2 + 10, signal)
  const results = new Array<ArchiveResult<Task>>(orders.length)
  let next = 0
  let done = 0
  const take = async (): Promise<void> => {
    while (next < orders.length) {
      signal.throwIfAborted()
      const index = next
      next += 1
      const order = orders[index]
      if (!order) return
      results[index] = await runner.run(task, order, signal).catch(async (error: unknown) => {
        signal.throwIfAborted()
        const { setAside } = await import('./archive-tasks.js')
        return setAside[task](order.file, whyNot(error))
      })
      done += 1
      onProgress({ done, of: orders.length })
    }
  }
  await Promise.all(Array.from({ length: Math.max(1, runner.atOnce) }, take))
  return results
}

/** A file that no worker could finish: what happened, in words. */
export const whyNot = (error: unknown): string =>
  `it could not be processed: ${error instanceof Error ? error.message : String(error)}`
