import type { AssessedTest } from '../../assessment/evaluate.js'
import type { Evaluation, TestRecord } from '../../contract/record/index.js'
import type { Method } from '../../methods/index.js'
import type { CheckPlaces } from './check-sheet.js'
import type { Pictures } from './pictures/picture.js'
import type { Places } from './places.js'

export const SUMMARY = 'Summary'
export const SUMMARY_COLUMNS = 6

export interface SummaryInput {
  readonly record: TestRecord
  readonly evaluation: Evaluation
  readonly test: AssessedTest
  readonly method: Method
  readonly places: Places
  readonly check: CheckPlaces
  readonly pictures?: Pictures
}

/** Rows that the chart covers, counted from 0. */
export interface ChartRows {
  readonly from: number
  readonly to: number
}
