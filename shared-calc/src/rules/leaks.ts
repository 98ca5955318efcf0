import { leakFindings } from '../leaks/findings.js'
import type { Rule } from './rule.js'

/** What the leak log of a record leaves open or contradicts. */
export const leakLog: Rule = ({ record, test }) =>
  record.leaks && test.leaks ? leakFindings(record, record.leaks, test.leaks) : []
