import { CALCULATION_VERSION } from '../catalogue/calculation-version.js'
import { remarksAmongFiles } from './among-files.js'
import { outcomes, type RerunOutcome, type RerunTest } from './report.js'

export const RERUN_FORMAT = 'draughtbook/rerun@1'

/** A whole re-run: every file given, the gravest outcomes first. */
export interface RerunReport {
  readonly format: typeof RERUN_FORMAT
  readonly calculationVersion: string
  /** Date of the re-run. */
  readonly asOf: string
  readonly tests: readonly RerunTest[]
  /** Files that hold no record: registers, re-runs, buildings and stages. Absent where there are none. */
  readonly passedOver?: readonly string[]
  readonly counts: { readonly [outcome in RerunOutcome]: number }
}

/** Puts tests re-run one by one together, with what shows only among them. */
export function makeRerunReport(
  given: readonly RerunTest[],
  asOf: string,
  passedOver: readonly string[] = [],
): RerunReport {
  const remarks = remarksAmongFiles(given)
  const tests = given.map((test) => {
    const among = remarks.get(test)
    return among ? { ...test, remarks: among } : test
  })
  const rank = ({ outcome }: RerunTest) => -outcomes.indexOf(outcome)
  const sorted = [...tests].sort(
    (a, b) =>
      rank(a) - rank(b) ||
      (a.file < b.file ? -1 : a.file > b.file ? 1 : 0) ||
      (a.part ?? '').localeCompare(b.part ?? '', 'en', { numeric: true }),
  )
  const count = (wanted: RerunOutcome) => tests.filter(({ outcome }) => outcome === wanted).length
  return {
    format: RERUN_FORMAT,
    calculationVersion: CALCULATION_VERSION,
    asOf,
    tests: sorted,
    ...(passedOver.length > 0 && { passedOver }),
    counts: Object.fromEntries(outcomes.map((outcome) => [outcome, count(outcome)])) as RerunReport['counts'],
  }
}

/** Outcomes that an auditor must look at. */
export const bad: readonly RerunOutcome[] = [
  'differs',
  'inputs changed after issue',
  'signature not accepted',
  'cannot be read',
]

/** Whether something was found that an auditor must look at. */
export const foundDifference = ({ counts }: RerunReport): boolean =>
  bad.some((outcome) => counts[outcome] > 0)
