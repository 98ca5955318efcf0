import type { Response } from 'express'
import { within } from '../http/within.js'
import { type Jobs, jobsHere } from './jobs.js'
import type { TaskInput, TaskName, TaskResult } from './tasks.js'

/**
 * Bodies above this go to a worker. Whatever a body of this size says, and however it is wrong, it takes the event loop no more
 * than a few milliseconds.
 */
export const SMALL = 4 * 1024

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
