import { InputError, type Problem } from '@draughtbook/shared-calc'
import { listed } from '../http/listed.js'
import { JsonError } from '../json/read-json.js'

/** What a task came to, in a form that survives the way between threads: error classes do not. */
export type Outcome<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly malformed: boolean; readonly problems: readonly Problem[] }

/** Awaits work; input that cannot be used is an outcome, any other error is thrown. */
export async function settle<T>(work: () => Promise<T>): Promise<Outcome<T>> {
  try {
    return { ok: true, value: await work() }
  } catch (error) {
    return ofFault(error)
  }
}

/** The same for work that is done at once. */
export function settleNow<T>(work: () => T): Outcome<T> {
  try {
    return { ok: true, value: work() }
  } catch (error) {
    return ofFault(error)
  }
}

function ofFault(error: unknown): Outcome<never> {
  if (!(error instanceof InputError)) throw error
  return { ok: false, malformed: error instanceof JsonError, problems: listed(error.problems) }
}

/** The value of an outcome. Throws the error it stands for. */
export function unwrap<T>(outcome: Outcome<T>): T {
  if (outcome.ok) return outcome.value
  throw outcome.malformed ? new JsonError(outcome.problems) : new InputError(outcome.problems)
}
