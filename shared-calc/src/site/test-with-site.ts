import type { TestRecord } from '../contract/record/index.js'
import type { WorkedTest } from '../evaluation/work/worked-test.js'
import type { Method } from '../methods/method.js'
import { type WorkedLeaks, workLeaks } from './leaks/work-leaks.js'
import { planOfRecord } from './plan/request.js'
import { type WorkedPlan, workPlan } from './plan/work-plan.js'
import { type WorkedTakeOff, workTakeOff } from './take-off/work-take-off.js'

/** A worked test with what its record holds beside the readings. */
export interface TestWithSite extends WorkedTest {
  readonly takeOff?: WorkedTakeOff
  readonly plan?: WorkedPlan
  readonly leaks?: WorkedLeaks
}

/** Adds take-off, plan and leaks, where the record has them, to the blocks of the test. */
export function withSite(record: TestRecord, method: Method, test: WorkedTest): TestWithSite {
  const { calculation } = test
  const plan = planOfRecord(record)
  return {
    ...test,
    ...(record.takeOff && { takeOff: workTakeOff(calculation, record.takeOff) }),
    ...(plan && { plan: workPlan(plan, method, calculation) }),
    ...(record.leaks && { leaks: workLeaks(test, record.leaks) }),
  }
}
