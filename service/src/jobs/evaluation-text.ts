import type { Evaluation } from '@draughtbook/shared-calc'

/** An evaluation as the text of an answer, with what the audit line and the metrics tell of it. */
export const evaluationText = (evaluation: Evaluation) => ({
  json: JSON.stringify(evaluation),
  digest: evaluation.recordDigest,
  outcome: evaluation.verdict.outcome,
})
