import { britishIsles } from './catalogue/british-isles.js'
import { canada } from './catalogue/canada.js'
import { france } from './catalogue/france.js'
import { germanSpeaking } from './catalogue/german-speaking.js'
import { nordic } from './catalogue/nordic.js'
import { passiveHouses } from './catalogue/passive-house.js'
import { unitedStates } from './catalogue/united-states.js'
import type { TargetPreset } from './target.js'

export type { Accepted, LimitRule, TargetPreset } from './target.js'

/**
 * Published limits, one entry each; entries of older editions stay, so that archived records keep their target. Local
 * codes decide: check the edition in force where the building stands.
 */
export const targetPresets: readonly TargetPreset[] = [
  ...passiveHouses,
  ...britishIsles,
  ...germanSpeaking,
  ...france,
  ...nordic,
  ...canada,
  ...unitedStates,
]
