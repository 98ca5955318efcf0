import { setTimeout as pause } from 'node:timers/promises'
import { HttpFault } from '../http/http-fault.js'
import type { Jobs } from '../jobs/jobs.js'
import type { ArchiveResult, ArchiveTask, FileOrder } from './archive-tasks.js'
import type { FileRunner } from './run-archive.js'

const WAIT_MS = 150

/** The service's own workers. A file waits while they are busy: the request that brought it was let in already. */
export const jobRunner = (jobs: Jobs, workers: number): FileRunner => ({
  atOnce: workers,
  run: async <Task extends ArchiveTask>(task: Task, order: FileOrder, signal: AbortSignal) => {
    for (;;) {
      try {
        return (await jobs.run(
          task === 'register' ? 'registerFile' : 'rerunFile',
          order,
          signal,
        )) as ArchiveResult<Task>
      } catch (error) {
        if (!(error instanceof HttpFault && error.status === 503)) throw error
        await pause(WAIT_MS, undefined, { signal })
      }
    }
  },
  close: async () => undefined,
})
