import { InputError } from '../contract/problem.js'
import { problemsInWords } from '../contract/record/index.js'
import { isRegister, openArchived, ownReport } from '../reports/archive/open-archived.js'
import { rerunRegister } from './register/rerun-register.js'
import { type RerunOptions, type RerunTest, unreadable } from './report.js'
import { rerunOwnLayout } from './rerun-own-layout.js'
import { rerunSummary } from './rerun-summary.js'

/**
 * Re-runs one archived file: recomputes it from its inputs and compares with all that it records. Never throws for a
 * file that cannot be read: that is an outcome.
 * @returns one entry for each test of the file
 */
export async function rerunFile(
  bytes: Uint8Array,
  file: string,
  options: RerunOptions = {},
): Promise<RerunTest[]> {
  try {
    const { grid, summary } = openArchived(bytes, file)
    if (summary) return [await rerunSummary(file, bytes, grid, summary, options)]
    if (isRegister(grid)) return [rerunRegister(file, grid)]
    // Re-runs, buildings and stages lie beside what they are about; they hold nothing to re-run.
    if (ownReport(grid) !== undefined) return []
    return rerunOwnLayout(file, grid, options)
  } catch (error) {
    if (!(error instanceof InputError)) throw error
    return [unreadable(file, problemsInWords(error.problems))]
  }
}
