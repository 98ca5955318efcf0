import type { Source } from '../sheet/index.js'

/** Source of a rule that the trade follows and no standard states. */
export const practiceSource: Source = { text: 'common practice, no source', seen: 'common practice' }
