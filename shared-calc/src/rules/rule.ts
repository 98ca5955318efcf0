import type { Method } from '../methods/method.js'
import type { Direction, Finding, TestRecord } from '../record/index.js'
import type { Source } from '../sheet/index.js'
import type { WorkedTest } from '../work/worked-test.js'

/** What a rule may look at. */
export interface RuleContext {
  readonly record: TestRecord
  readonly method: Method
  readonly test: WorkedTest
}

/** Looks at a worked test and returns what it objects to; an empty list when all is well. */
export type Rule = (context: RuleContext) => readonly Finding[]

const provenances: Readonly<Record<Source['seen'], string>> = {
  read: 'read in the source',
  memory: 'value from memory',
  derived: 'derived',
  'common practice': 'common practice, no source',
  definition: 'definition',
}

/** Clause and provenance of a finding, from the source of the limit it tests. */
export function citing(source: Source): { clause: string; provenance: string } {
  return { clause: source.text, provenance: provenances[source.seen] }
}

/** A number as findings print it: at most `decimals` places, no trailing zeros. */
export const plain = (value: number, decimals = 2): string => String(Number(value.toFixed(decimals)))

/** A reading as findings name it: both runs have a reading 1. */
export const readingName = (direction: Direction, index: number): string =>
  `${direction}, reading ${index + 1}`
