import { acceptRecord, evaluate } from '@draughtbook/shared-calc'
import { jsonOf } from '../json/read-json.js'

/** Body of a record, and what was asked for beside the evaluation. */
export interface EvaluationOrder {
  readonly body: Uint8Array
  readonly trace: boolean
  /** A record with an uncertainty part always gets its budget. */
  readonly uncertainty: boolean
}

/** An evaluation as the text of an answer, with its entries for the audit line and the metrics. */
export interface EvaluationText {
  readonly json: string
  readonly digest: string
  readonly outcome: string
}

/** An evaluation as the bytes of an answer. */
export interface EvaluationBytes extends Omit<EvaluationText, 'json'> {
  readonly json: Uint8Array
}

/** Body of a record → the evaluation's JSON. */
export function evaluation({ body, trace, uncertainty }: EvaluationOrder): EvaluationText {
  const evaluated = evaluate(acceptRecord(jsonOf(body)), { trace, ...(uncertainty && { uncertainty }) })
  return {
    json: JSON.stringify(evaluated),
    digest: evaluated.recordDigest,
    outcome: evaluated.verdict.outcome,
  }
}
