import { CALCULATION_VERSION } from '../calculation-version.js'
import { evaluateWorked } from '../evaluate.js'
import { layOutSummary } from '../workbook/write-summary.js'
import type { RunnableVersion } from './version.js'

/**
 * Every calculation version ever issued, oldest first; the last is the current one. When the version rises, the old
 * one is frozen first (`npm run freeze -w shared-calc`) and stays in this list, so that its workbooks still re-run.
 */
export const versions: readonly RunnableVersion[] = [
  { version: CALCULATION_VERSION, changed: 'first version', evaluateWorked, layOutSummary },
]
