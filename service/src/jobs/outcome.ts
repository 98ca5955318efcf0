import { InputError, type Problem } from '@draughtbook/shared-calc'
import { JsonError } from '../json/read-json.js'
import { type TaskInput, type TaskName, type TaskResult, tasks } from './tasks.js'

/** What a task came to, in a form that survives the way between threads: error classes do not. */
export type Outcome<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly malformed: boolean; readonly problems: readonly Problem[] }

/** Runs a task; input that cannot be used is an outcome, any other error is thrown. */
export async function settle<Name extends TaskName>(
  name: Name,
  input: TaskInput<Name>,
): Promise<Outcome<TaskResult<Name>>> {
  try {
    const task = tasks[name] as unknown as (input: TaskInput<Name>) => Promise<TaskResult<Name>>
    return { ok: true, value: await task(input) }
  } catch (error) {
    if (!(error instanceof InputError)) throw error
    const problems = error.problems.map(({ path, cell, message }) => ({
      path,
      ...(cell !== undefined && { cell }),
      message,
    }))
    return { ok: false, malformed: error instanceof JsonError, problems }
  }
}

/** The value of an outcome. Throws the error it stands for. */
export function unwrap<T>(outcome: Outcome<T>): T {
  if (outcome.ok) return outcome.value
  throw outcome.malformed ? new JsonError(outcome.problems) : new InputError(outcome.problems)
}
