import type { Response } from 'express'
import { within } from '../http/within.js'
import { settle, unwrap } from './outcome.js'
import type { TaskInput, TaskName, TaskResult } from './tasks.js'

/** Where heavy work goes. */
export interface Jobs {
  /** @param signal - ends the work when the caller no longer wants it */
  run<Name extends TaskName>(
    name: Name,
    input: TaskInput<Name>,
    signal: AbortSignal,
  ): Promise<TaskResult<Name>>
  close(): Promise<void>
}

/** The tasks are loaded with the first of them: the service answers before it needs any. */
const loadTasks = () => import('./tasks.js')

/** Work on the calling thread: small requests of the service, and tests. */
export const jobsHere: Jobs = {
  run: async <Name extends TaskName>(name: Name, input: TaskInput<Name>): Promise<TaskResult<Name>> => {
    const { runTask } = await loadTasks()
    return unwrap<TaskResult<Name>>(await settle(() => runTask(name, input)))
  },
  close: async () => undefined,
}

/**
 * Bodies above this go to a worker. Whatever a body of this size says, and however it is wrong, it takes the event loop no more
 * than a few milliseconds.
 */
const SMALL = 4 * 1024

interface Place {
  readonly jobs: Jobs
  readonly timeout_s: number
  readonly response: Response
}

/** Does the work a body asks for: here where it is small, else in a worker. */
export function doWork<Name extends TaskName>(
  { jobs, timeout_s, response }: Place,
  name: Name,
  input: TaskInput<Name> & { readonly body: Uint8Array },
): Promise<TaskResult<Name>> {
  if (input.body.length <= SMALL) return jobsHere.run(name, input, new AbortController().signal)
  return within(response, timeout_s, (signal) => jobs.run(name, input, signal))
}
