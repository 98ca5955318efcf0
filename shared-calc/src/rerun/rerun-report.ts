import { CALCULATION_VERSION } from '../catalogue/calculation-version.js'
import { remarksAmongFiles } from './among-files.js'
import { compareRegister } from './register/compare-register.js'
import { outcomes, type RerunOutcome, type RerunTest } from './report.js'

export const RERUN_FORMAT = 'draughtbook/rerun@1'

/** A whole re-run: every file given, the gravest outcomes first. */
export interface RerunReport {
  readonly format: typeof RERUN_FORMAT
  readonly calculationVersion: string
  /** Date of the re-run. */
  readonly asOf: string
  readonly tests: readonly RerunTest[]
  /** Files that hold no record: re-runs, buildings, stages, and registers none of whose tests is given. Absent where there are none. */
  readonly passedOver?: readonly string[]
  readonly counts: { readonly [outcome in RerunOutcome]: number }
}

/** Puts tests re-run one by one together, with what shows only among them. */
export function makeRerunReport(
  given: readonly RerunTest[],
  asOf: string,
  passedOver: readonly string[] = [],
): RerunReport {
  const files = given.filter(({ kind }) => kind !== 'register')
  const remarks = remarksAmongFiles(files)
  const registers = given.filter(({ kind }) => kind === 'register')
  const compared = registers.map((register) => compareRegister(register, files))
  const notCompared = registers.filter((_, i) => compared[i] === undefined).map(({ file }) => file)
  const tests = [
    ...files.map(({ quoted: _, ...test }, i): RerunTest => {
      const among = remarks.get(files[i] as RerunTest)
      return among ? { ...test, remarks: among } : test
    }),
    ...compared.filter((one) => one !== undefined),
  ]
  const notRerun = [...passedOver, ...notCompared].sort()
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
    ...(notRerun.length > 0 && { passedOver: notRerun }),
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
