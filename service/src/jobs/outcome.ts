import { type EvaluateOptions, type Evaluation, InputError, type Problem } from '@draughtbook/shared-calc'
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

/** An evaluation as the text of an answer, with what the audit line and the metrics tell of it. */
export const evaluationText = (evaluation: Evaluation) => ({
  json: JSON.stringify(evaluation),
  digest: evaluation.recordDigest,
  outcome: evaluation.verdict.outcome,
})

export type EvaluationText = ReturnType<typeof evaluationText>

/** What a request asked for beside the evaluation; a record with an uncertainty part has its budget unasked. */
export const evaluateOptions = (trace: boolean, uncertainty: boolean): EvaluateOptions => ({
  trace,
  ...(uncertainty && { uncertainty }),
})
