import type { Rule } from '../evaluation/rules/rule.js'
import { leakLog } from './leaks/findings.js'
import {
  cautionContradicted,
  cautionsUnanswered,
  preparationBlank,
  preparationDeparts,
  preparationPurpose,
} from './preparation/rules.js'
import { takeOffParts, takeOffUsed } from './take-off/rules.js'
import type { TestWithSite } from './test-with-site.js'

/** Rules on what a record holds beside the readings: preparation, take-off, leaks. */
export const siteRules: readonly Rule<TestWithSite>[] = [
  preparationDeparts,
  preparationBlank,
  preparationPurpose,
  cautionsUnanswered,
  cautionContradicted,
  takeOffUsed,
  takeOffParts,
  leakLog,
]
