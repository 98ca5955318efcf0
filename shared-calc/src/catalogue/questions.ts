import { houseQuestions } from './questions/house.js'
import { readingQuestions } from './questions/readings.js'
import { unitQuestions } from './questions/units.js'
import { zeroFlowQuestions } from './questions/zero-flow.js'

/** What the reader of logs asks where a log leaves open what the figures depend on. */
export const questions = {
  ...readingQuestions,
  ...unitQuestions,
  ...zeroFlowQuestions,
  ...houseQuestions,
} as const
