import { CALCULATION_VERSION } from '../catalogue/calculation-version.js'
import * as current from './current.js'
import type { RunnableVersion } from './version.js'

/**
 * Every calculation version ever issued, oldest first; the last is the current one. When the version rises, the old
 * one is frozen first (`npm run freeze -w shared-calc`) and stays in this list, so that its workbooks still re-run.
 * A frozen version is one generated file: `{ version, changed, ...(v1_0_0 as unknown as VersionParts) }`.
 */
export const versions: readonly RunnableVersion[] = [
  { version: CALCULATION_VERSION, changed: 'first version', ...current },
]
