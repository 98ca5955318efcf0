import { interpretLog } from '@draughtbook/shared-calc/log'
import type { Reader } from './reader.js'

/** The program's own reader of logs that nobody has described to it. */
export const interpreter: Reader = (bytes, fileName, answers) =>
  interpretLog({ bytes, fileName }, { answers })
