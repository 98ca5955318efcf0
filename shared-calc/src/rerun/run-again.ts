import type { AssessedTest } from '../assessment/evaluate.js'
import { isMadeOutsideRecord } from '../catalogue/findings/finding.js'
import type { Evaluation, Finding, TestRecord } from '../contract/record/index.js'
import type { KnownVersion, RunnableVersion } from '../versions/version.js'
import { compareEvaluations } from './compare-evaluations.js'
import type { Difference } from './report.js'

export interface RunAgain {
  readonly evaluation: Evaluation
  readonly test: AssessedTest
}

/**
 * Runs a version on a record. Findings made while a log was read cannot come from the record alone, nor the cells
 * that findings name: both are taken over from what was recorded, so that they raise no difference.
 */
export function runAgain(version: RunnableVersion, record: TestRecord, recorded: Evaluation): RunAgain {
  const reading = readingFindings(recorded)
  const { evaluation, test } = version.evaluateWorked(record, {
    findings: reading,
    // It may have been asked for beyond the record; only what was recorded can tell.
    ...(recorded.uncertainty && { uncertainty: true }),
  })
  const cellsOf = new Map(recorded.findings.map((finding) => [findingKey(finding), finding.cells]))
  const findings = evaluation.findings.map((finding) => {
    const cells = cellsOf.get(findingKey(finding))
    return cells ? { ...finding, cells } : finding
  })
  return { evaluation: { ...evaluation, findings }, test }
}

/**
 * Another machine, or a later Node, may work a logarithm out to another last digit. Then the recorded evaluation is the
 * one to expect on the sheets: its text and digest could not come out the same otherwise.
 */
export const expectedOnSheets = (
  recorded: Evaluation,
  again: RunAgain,
  { differences } = compareEvaluations(recorded, again.evaluation, again.test),
): RunAgain =>
  differences.every(({ rounding }) => rounding) ? { evaluation: recorded, test: again.test } : again

/** What the current version makes of the same record. */
export function changesSince(
  current: RunnableVersion,
  record: TestRecord,
  recorded: Evaluation,
): Difference[] {
  const now = runAgain(current, record, recorded)
  return compareEvaluations(recorded, now.evaluation, now.test).differences
}

export const versionNotes = (versions: readonly KnownVersion[], issuedUnder: KnownVersion): string[] =>
  versions
    .slice(versions.indexOf(issuedUnder) + 1)
    .map(({ version, changed }) => `version ${version}: ${changed}`)

const readingFindings = ({ findings }: Evaluation): Finding[] =>
  findings.filter(({ rule }) => isMadeOutsideRecord(rule))

export function readingNotes(recorded: Evaluation): string[] {
  const { length } = readingFindings(recorded)
  if (length === 0) return []
  return [
    length === 1
      ? '1 finding was made when the log or photos were read; it cannot be checked without them'
      : `${length} findings were made when the log or photos were read; they cannot be checked without them`,
  ]
}

/** Not by its message: wording may improve under the same version. */
const findingKey = ({ rule, where }: Finding): string => [rule, ...where].join('|')
