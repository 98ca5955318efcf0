import type { Rule } from '../../evaluation/rules/rule.js'
import type { TestWithSite } from '../test-with-site.js'
import { leakFindings } from './findings.js'

/** What the leak log of a record leaves open or contradicts. */
export const leakLog: Rule<TestWithSite> = ({ record, test }) =>
  record.leaks && test.leaks ? leakFindings(record, record.leaks, test.leaks) : []
