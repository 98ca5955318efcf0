import { bad, outcomes, type RerunOutcome, type RerunTest } from './report.js'

export const RERUN_FORMAT = 'draughtbook/rerun@1'

/** A whole re-run: every file given, the gravest outcomes first. */
export interface RerunReport {
  readonly format: typeof RERUN_FORMAT
  readonly calculationVersion: string
  /** Date of the re-run. */
  readonly asOf: string
  readonly tests: readonly RerunTest[]
  /** Files with nothing to compare: registers, buildings, stages and re-runs whose tests are not given. Absent where there are none. */
  readonly passedOver?: readonly string[]
  readonly counts: { readonly [outcome in RerunOutcome]: number }
}

/** How many tests have each outcome. */
export const countsOf = (tests: readonly RerunTest[]): RerunReport['counts'] =>
  Object.fromEntries(
    outcomes.map((wanted) => [wanted, tests.filter(({ outcome }) => outcome === wanted).length]),
  ) as RerunReport['counts']

/** The report as it is written down: without re-runs that agree, or one written where the last one lay would list itself. */
export function withoutReruns(report: RerunReport): RerunReport {
  const tests = report.tests.filter(({ kind, outcome }) => kind !== 're-run' || bad.includes(outcome))
  return { ...report, tests, counts: countsOf(tests) }
}
