import { CALCULATION_VERSION } from '../catalogue/calculation-version.js'
import { compareRerun } from './again/compare-rerun.js'
import { remarksAmongFiles } from './among-files.js'
import { compareRegister } from './register/compare-register.js'
import { bad, outcomes, type RerunTest } from './report.js'
import { countsOf, RERUN_FORMAT, type RerunReport } from './report-of-all.js'
import { compareSeveral } from './several/compare-several.js'

/** Puts tests re-run one by one together, with what shows only among them. */
export async function makeRerunReport(
  given: readonly RerunTest[],
  asOf: string,
  passedOver: readonly string[] = [],
): Promise<RerunReport> {
  const ofTests = (kind: RerunTest['kind']) =>
    kind !== 'register' && kind !== 'building' && kind !== 'stages' && kind !== 're-run'
  const files = given.filter(({ kind }) => ofTests(kind))
  const remarks = remarksAmongFiles(files)
  const reports = given.filter(({ kind }) => !ofTests(kind))
  const compared = await Promise.all(
    reports.map((one) => {
      if (one.kind === 're-run')
        return compareRerun(
          one,
          given.filter((other) => other !== one),
          makeRerunReport,
        )
      return one.kind === 'register' ? compareRegister(one, files) : compareSeveral(one, files)
    }),
  )
  const notCompared = reports.filter((_, i) => compared[i] === undefined).map(({ file }) => file)
  const tests = [
    ...files.map(({ line: _, given: _given, ...test }, i): RerunTest => {
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
  return {
    format: RERUN_FORMAT,
    calculationVersion: CALCULATION_VERSION,
    asOf,
    tests: sorted,
    ...(notRerun.length > 0 && { passedOver: notRerun }),
    counts: countsOf(tests),
  }
}

/** Whether something was found that an auditor must look at. */
export const foundDifference = ({ counts }: RerunReport): boolean =>
  bad.some((outcome) => counts[outcome] > 0)
