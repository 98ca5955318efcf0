import { evaluate, type Finding, type TestRecord } from '@draughtbook/shared-calc'

/** The findings of one rule in the evaluation of a record. */
export const findingsOf = (record: TestRecord, rule: string): Finding[] =>
  evaluate(record).findings.filter((finding) => finding.rule === rule)
