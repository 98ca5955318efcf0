import type { EvaluationText } from './evaluation.js'

/** An evaluation as the bytes of an answer. */
export interface EvaluationBytes extends Omit<EvaluationText, 'json'> {
  readonly json: Uint8Array
}

/** The text of an answer as its bytes. */
export const inBytes = ({ json, ...entries }: EvaluationText): EvaluationBytes => ({
  json: Buffer.from(json),
  ...entries,
})
