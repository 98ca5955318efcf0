import type { EvaluateOptions } from '../evaluate.js'
import type { Evaluation, TestRecord } from '../record/index.js'
import type { WorkedTest } from '../work/worked-test.js'
import type { layOutSummary } from '../workbook/write-summary.js'

/** One calculation version that can be run: how it evaluates, and how it lays its summary out in cells. */
export interface RunnableVersion {
  /** As written into evaluations and workbooks. */
  readonly version: string
  /** What changed against the version before, for the auditor. */
  readonly changed: string
  readonly evaluateWorked: (
    record: TestRecord,
    options?: EvaluateOptions,
  ) => { evaluation: Evaluation; test: WorkedTest }
  readonly layOutSummary: typeof layOutSummary
}
