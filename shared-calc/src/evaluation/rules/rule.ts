import type { Finding, TestRecord } from '../../contract/record/index.js'
import type { Method } from '../../methods/method.js'
import type { WorkedTest } from '../work/worked-test.js'

/** What a rule may look at. */
export interface RuleContext<Test extends WorkedTest = WorkedTest> {
  readonly record: TestRecord
  readonly method: Method
  readonly test: Test
}

/** Nothing found. */
export const silent: readonly Finding[] = []

/**
 * What is found in each of several, in their order; a rule that is silent, as most are, makes no list. It is flatMap for
 * findings, at a fraction of its time.
 */
export function inEach<T>(
  several: readonly T[],
  look: (one: T, index: number) => readonly Finding[],
): readonly Finding[] {
  let found: Finding[] | undefined
  for (let i = 0; i < several.length; i += 1) {
    const here = look(several[i] as T, i)
    if (here.length === 0) continue
    found ??= []
    found.push(...here)
  }
  return found ?? silent
}

/** Looks at a worked test and returns its findings; an empty list when all is well. */
export type Rule<Test extends WorkedTest = WorkedTest> = (context: RuleContext<Test>) => readonly Finding[]
