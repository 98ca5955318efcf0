import { generate } from '../generate.js'
import { composed } from './composed.js'
import { devices } from './devices.js'
import { dirty } from './dirt.js'
import { languages } from './languages.js'
import { openQuestions } from './open-questions.js'
import { several } from './several.js'
import { textFiles } from './text-files.js'
import { units } from './units.js'
import { variants } from './variants.js'
import { zeroFlows } from './zero-flow.js'

/** Every generated log, in both halves. */
export const generatedLogs = [
  ...languages,
  ...units,
  ...zeroFlows,
  ...dirty,
  ...several,
  ...devices,
  ...textFiles,
  ...openQuestions,
  ...composed,
  ...variants,
].map(generate)
