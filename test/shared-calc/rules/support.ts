import type { Finding, TestRecord } from '@draughtbook/shared-calc'
import { describe, expect, it } from 'vitest'
import { findingsOf } from '../support/findings'
import { recordWith } from '../support/records'

type Expected = Partial<Pick<Finding, 'severity' | 'where' | 'value' | 'limit'>>

/** A case of a rule: a change to the faultless record, and the findings the rule then has; none where it holds. */
export type RuleCase = readonly [
  title: string,
  change: (record: TestRecord) => void,
  expected?: Expected | readonly Expected[],
]

/** One group of tests for each rule, one test for each of its cases. */
export function describeRules(rules: Readonly<Record<string, readonly RuleCase[]>>): void {
  for (const [rule, cases] of Object.entries(rules))
    describe(`rule ${rule}`, () => {
      for (const ruleCase of cases) it(ruleCase[0], () => expectFindings(rule, ruleCase))
    })
}

/** Evaluates a case and compares what the rule finds: severity, place, value and limit as far as they are given. */
function expectFindings(rule: string, [title, change, expected = []]: RuleCase): void {
  const found = findingsOf(recordWith(change), rule)
  const wanted = [expected].flat() as readonly Expected[]
  expect(
    found.map(({ message }) => message),
    title,
  ).toHaveLength(wanted.length)
  wanted.forEach((one, i) => {
    const { value, ...rest } = one
    expect(found[i], title).toMatchObject(rest)
    if (value !== undefined) expect(found[i]?.value, title).toBeCloseTo(value, 9)
  })
  for (const finding of found) {
    // A finding says what is wrong, where, by which clause, how that is known, and what to do about it.
    expect(finding.message, title).toMatch(/\w/)
    expect(finding.where, title).not.toEqual([])
    for (const text of [finding.clause, finding.provenance, finding.remedy]) expect(text, title).toMatch(/\w/)
  }
}
