import { hash } from 'node:crypto'
import type { EvaluateOptions, Evaluation } from '@draughtbook/shared-calc'

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
  sha256: (text) => hash('sha256', text),
  ...(uncertainty && { uncertainty }),
})
