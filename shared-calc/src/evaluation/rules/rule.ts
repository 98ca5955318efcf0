import type { Finding, TestRecord } from '../../contract/record/index.js'
import type { Method } from '../../methods/method.js'
import type { WorkedTest } from '../work/worked-test.js'

/** What a rule may look at. */
export interface RuleContext<Test extends WorkedTest = WorkedTest> {
  readonly record: TestRecord
  readonly method: Method
  readonly test: Test
}

/** Looks at a worked test and returns its findings; an empty list when all is well. */
export type Rule<Test extends WorkedTest = WorkedTest> = (context: RuleContext<Test>) => readonly Finding[]
