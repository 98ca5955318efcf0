import { problemsOf } from '../contract/problem.js'
import { problemsInWords } from '../contract/record/index.js'
import { reportKind } from '../log/own-report.js'
import { openArchived } from '../reports/archive/open-archived.js'
import { rerunRegister } from './register/rerun-register.js'
import { type RerunTest, unreadable } from './report.js'
import type { RerunOptions } from './rerun-options.js'
import { rerunOwnLayout } from './rerun-own-layout.js'
import { rerunSummary } from './rerun-summary.js'
import { rerunSeveral } from './several/compare-several.js'

/**
 * Re-runs one archived file: recomputes it from its inputs and compares with all that it records. Never throws for a
 * file that cannot be read: that is an outcome.
 * @returns one entry for each test of the file; none for a plan or a take-off
 */
export async function rerunFile(
  bytes: Uint8Array,
  file: string,
  options: RerunOptions = {},
): Promise<RerunTest[]> {
  try {
    const { grid, summary } = openArchived(bytes, file)
    if (summary) return [await rerunSummary(file, bytes, grid, summary, options)]
    const kind = reportKind(grid)
    if (kind === 'register') return [rerunRegister(file, grid, bytes)]
    if (kind === 'building' || kind === 'stages' || kind === 're-run')
      return [rerunSeveral(file, bytes, kind)]
    if (kind === 'plan' || kind === 'take-off') return []
    return rerunOwnLayout(file, grid, options)
  } catch (error) {
    const problems = problemsOf(error)
    if (problems === undefined) throw error
    return [unreadable(file, problemsInWords(problems))]
  }
}
