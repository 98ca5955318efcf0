import {
  type Evaluation,
  evaluate,
  type TestRecord,
  type UncertaintyEvaluation,
} from '@draughtbook/shared-calc'

/** What the section "Uncertainty" shows of a test. */
export interface Sure extends Pick<Evaluation, 'decision' | 'fits'> {
  readonly uncertainty: UncertaintyEvaluation
}

/** The uncertainty of a record, worked out in the pane. Throws InputError as evaluate does. */
export function sureOf(record: TestRecord): Sure | undefined {
  const { uncertainty, decision, fits } = evaluate(record, { uncertainty: true })
  return uncertainty && { uncertainty, ...(decision && { decision }), ...(fits && { fits }) }
}
