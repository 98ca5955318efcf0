import type { EvaluateOptions } from '../evaluate.js'
import type { Evaluation, TestRecord } from '../record/index.js'
import type { WorkedTest } from '../work/worked-test.js'
import type { layOutSummary } from '../workbook/write-summary.js'

/** How a version evaluates a record, and how it lays the summary out in cells. */
export interface VersionParts {
  readonly evaluateWorked: (
    record: TestRecord,
    options?: EvaluateOptions,
  ) => { evaluation: Evaluation; test: WorkedTest }
  readonly layOutSummary: typeof layOutSummary
}

/** One calculation version that can be run. */
export interface RunnableVersion extends VersionParts {
  /** As written into evaluations and workbooks. */
  readonly version: string
  /** What changed against the version before, for the auditor. */
  readonly changed: string
}
