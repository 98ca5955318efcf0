import type { AssessedTest } from '../assessment/assessed-test.js'
import { counted } from '../catalogue/words.js'
import type { Evaluation, Finding } from '../contract/record/index.js'
import type { Grid } from '../log/grid/grid.js'
import type { ReadSummary } from '../reports/workbook/read-summary.js'
import { signedMessage } from '../reports/workbook/record-signature.js'
import { versions as known, type RunnableVersion } from '../versions/index.js'
import { compareEvaluations } from './compare-evaluations.js'
import { compareSheets } from './compare-sheets.js'
import { inputCells } from './input-cells.js'
import type { RerunOptions } from './options.js'
import { outcomeOf } from './outcome.js'
import type { Difference, RerunTest, SignatureState } from './report.js'

/** Re-runs a summary workbook of ours: digests, signature, every figure, every cell. */
export async function rerunSummary(
  file: string,
  grid: Grid,
  summary: ReadSummary,
  { versions = known, verify }: RerunOptions,
): Promise<RerunTest> {
  const { record, evaluation: recorded, calculationVersion } = summary
  const { building, test: details } = record
  const signature = signatureState(summary, verify)
  const about = {
    file,
    kind: 'summary workbook' as const,
    building: building.name,
    ...(building.site !== undefined && { site: building.site }),
    date: details.date,
    ...(details.id !== undefined && { testNumber: details.id }),
    calculationVersion,
    recordDigest: summary.digests.record.found,
    signature,
  }
  const issuedUnder = versions.find(({ version }) => version === calculationVersion)
  if (!issuedUnder)
    return {
      ...about,
      outcome: 'cannot be read',
      why: `calculation version ${calculationVersion} is unknown; the known ${versions.length === 1 ? 'version is' : 'versions are'} ${versions.map(({ version }) => version).join(', ')}`,
      compared: { figures: 0, cells: 0 },
      differences: [],
      sinceIssue: [],
      notes: [],
    }
  const expected = runAgain(issuedUnder, summary)
  const written = await issuedUnder.layOutSummary(
    record,
    { test: expected.test, evaluation: onlyRounding(recorded, expected) ? recorded : expected.evaluation },
    summary.signature,
  )
  const figures = compareEvaluations(recorded, expected.evaluation, expected.test, written.places)
  const cells = compareSheets(grid, written.workbook, inputCells(written.places))
  const differences = [
    ...digestDifferences(summary),
    ...signatureDifferences(signature),
    ...figures.differences,
    ...cells.differences,
  ]
  const current = versions.at(-1)
  const older = current !== undefined && current !== issuedUnder
  return {
    ...about,
    ...outcomeOf(differences, older ? calculationVersion : undefined),
    verdict: { recorded: recorded.verdict.outcome, recomputed: expected.evaluation.verdict.outcome },
    compared: { figures: figures.figures, cells: cells.cells },
    differences,
    sinceIssue: older ? changesSince(current, summary) : [],
    notes: [...cells.notes, ...readingNotes(recorded), ...(older ? versionNotes(versions, issuedUnder) : [])],
  }
}

/**
 * Another machine, or a later Node, may work a logarithm out to another last digit. Then the recorded evaluation is the
 * one to expect on the sheets: its text and digest could not come out the same otherwise.
 */
const onlyRounding = (
  recorded: Evaluation,
  { evaluation, test }: { readonly evaluation: Evaluation; readonly test: AssessedTest },
): boolean => compareEvaluations(recorded, evaluation, test).differences.every(({ rounding }) => rounding)

/** What the current version makes of the same record. */
function changesSince(current: RunnableVersion, summary: ReadSummary): Difference[] {
  const now = runAgain(current, summary)
  return compareEvaluations(summary.evaluation, now.evaluation, now.test).differences
}

const versionNotes = (versions: readonly RunnableVersion[], issuedUnder: RunnableVersion): string[] =>
  versions
    .slice(versions.indexOf(issuedUnder) + 1)
    .map(({ version, changed }) => `version ${version}: ${changed}`)

/**
 * Runs a version on the record. Findings made while a log was read cannot come from the record alone, nor the cells
 * that findings name: both are taken over from what was recorded, so that they raise no difference.
 */
function runAgain(version: RunnableVersion, { record, evaluation: recorded }: ReadSummary) {
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

/** Rule ids of the log reader begin so. */
const readingFindings = ({ findings }: Evaluation): Finding[] =>
  findings.filter(({ rule }) => rule.startsWith('log-'))

const readingNotes = (recorded: Evaluation): string[] => {
  const { length } = readingFindings(recorded)
  return length === 0
    ? []
    : [`${counted(length, 'finding')} came from reading the log and cannot be re-run without it`]
}

/** Not by its message: wording may improve under the same version. */
const findingKey = ({ rule, where }: Finding): string => [rule, ...where].join('|')

function digestDifferences({ digests, evaluation, calculationVersion }: ReadSummary): Difference[] {
  const differences: Difference[] = []
  const differs = (label: string, recorded: string, expected: string): void => {
    if (recorded !== expected)
      differences.push({ kind: 'digest', label, cell: 'Record', recorded, expected, rounding: false })
  }
  differs('digest of the record', digests.record.written, digests.record.found)
  differs('digest of the evaluation', digests.evaluation.written, digests.evaluation.found)
  differs('digest of the record in the evaluation', evaluation.recordDigest, digests.record.found)
  differs('calculation version in the evaluation', evaluation.calculationVersion, calculationVersion)
  return differences
}

function signatureState(
  { signature, evaluation, digests }: ReadSummary,
  verify: RerunOptions['verify'],
): SignatureState {
  if (!signature) return { state: 'not signed' }
  const { keyId } = signature
  if (!verify) return { state: 'key not given', keyId }
  // The digests as they are found, not as they are written: what stands in the file is what must have been signed.
  const found = { ...evaluation, recordDigest: digests.record.found }
  return { state: verify(signedMessage(found), signature), keyId }
}

const signatureDifferences = (signature: SignatureState): Difference[] =>
  signature.state === 'invalid'
    ? [
        {
          kind: 'signature',
          label: 'the signature does not match the record and evaluation',
          cell: 'Record',
          recorded: signature.keyId,
          expected: null,
          rounding: false,
        },
      ]
    : []
