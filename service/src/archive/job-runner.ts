import { setTimeout as pause } from 'node:timers/promises'
import { HttpFault } from '../http/http-fault.js'
import type { Jobs } from '../jobs/jobs.js'
import type { TaskInput, TaskName, TaskResult } from '../jobs/tasks.js'
import type { ArchiveResult, ArchiveTask, FileOrder } from './archive-tasks.js'
import type { FileRunner } from './run-archive.js'

const WAIT_MS = 150

/** Runs a task on the service's own workers; waits while they are busy: the request that brought it was let in already. */
export async function patiently<Name extends TaskName>(
  jobs: Jobs,
  name: Name,
  input: TaskInput<Name>,
  signal: AbortSignal,
): Promise<TaskResult<Name>> {
  for (;;) {
    try {
      return await jobs.run(name, input, signal)
    } catch (error) {
      if (!(error instanceof HttpFault && error.status === 503)) throw error
      await pause(WAIT_MS, undefined, { signal })
    }
  }
}

const jobOf = { register: 'registerFile', records: 'recordsFile', rerun: 'rerunFile' } as const

/** The service's own workers as a runner of files. */
export const jobRunner = (jobs: Jobs, workers: number): FileRunner => ({
  atOnce: workers,
  run: async <Task extends ArchiveTask>(task: Task, order: FileOrder, signal: AbortSignal) =>
    (await patiently(jobs, jobOf[task], order, signal)) as ArchiveResult<Task>,
  close: async () => undefined,
})
