import type { Evaluation } from '../contract/record/index.js'
import type { Grid } from '../log/grid/grid.js'
import { archivedParts } from '../reports/archive/open-archived.js'
import { alteration } from '../reports/register/read-lines.js'
import { lineOf } from '../reports/register/test-line.js'
import { holdsIssuedRows } from '../reports/workbook/issued/issue.js'
import { digestParts } from '../reports/workbook/issued/issued-parts.js'
import type { ReadSummary } from '../reports/workbook/read-summary.js'
import { RECORD } from '../reports/workbook/record-sheet.js'
import type { Parts } from '../reports/workbook/zip/parts.js'
import { versions as known } from '../versions/list.js'
import { unknownVersion } from '../versions/unknown-version.js'
import { type RunnableVersion, runnable } from '../versions/version.js'
import { archiveDifferences } from './archive-shape.js'
import { type ComparedFigures, compareEvaluations } from './compare-evaluations.js'
import { type ComparedFile, compareFile, countCells, sameParts } from './compare-file.js'
import { type IssuedFile, type IssuedFiles, keptOrIssued } from './issued-file.js'
import { digestDifferences, fieldCell, issuedRecord } from './issued-record.js'
import { savedBy } from './look/package.js'
import { outcomeOf } from './outcome.js'
import { bad, type Difference, type RerunTest, type SignatureState } from './report.js'
import type { RerunOptions } from './rerun-options.js'
import { changedFields, withoutFollowing } from './root-causes.js'
import {
  changesSince,
  expectedOnSheets,
  type RunAgain,
  readingNotes,
  runAgain,
  versionNotes,
} from './run-again.js'
import { notAccepted, signatureState, unprovenWords } from './signature-state.js'

/** Re-runs a summary workbook of ours: signature, digests, every figure, every cell and everything that is seen of it. */
export async function rerunSummary(
  file: string,
  bytes: Uint8Array,
  grid: Grid,
  summary: ReadSummary,
  { versions = known, verify, requireSignature = false, kept }: RerunOptions,
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
    line: lineOf({ file, source: 'summary workbook' }, record, recorded),
  }
  const issuedUnder = versions.find((one) => one.version === calculationVersion)
  if (!issuedUnder)
    return {
      ...about,
      outcome: 'cannot be read',
      why: unknownVersion(calculationVersion, versions),
      compared: { figures: 0, cells: 0 },
      differences: [],
      sinceIssue: [],
      notes: [],
    }
  const parts = archivedParts(bytes)
  const found = await compare({ bytes, parts, grid, summary }, await runnable(issuedUnder), signature, kept)
  const current = versions.at(-1)
  const older = current !== undefined && current !== issuedUnder
  const refused = notAccepted(signature, requireSignature)
  const judged = outcomeOf(found.differences, {
    ...(older && { olderVersion: calculationVersion }),
    ...(refused !== undefined && { refused }),
    ...unprovenWords(signature),
    asIssued: found.asIssued,
    ...(found.savedAgain && { savedBy: savedBy(parts) }),
  })
  const altered = bad.includes(judged.outcome) ? alteration(summary, grid, () => parts) : undefined
  return {
    ...about,
    ...judged,
    given: { record, ...(altered !== undefined && { altered }) },
    verdict: { recorded: recorded.verdict.outcome, recomputed: found.verdict },
    compared: { figures: found.figures, cells: found.cells },
    differences: found.differences,
    sinceIssue: older ? changesSince(await runnable(current), record, recorded) : [],
    notes: [...found.notes, ...readingNotes(recorded), ...(older ? versionNotes(versions, issuedUnder) : [])],
  }
}

interface Compared extends ComparedFile {
  readonly figures: number
  readonly verdict: string
  readonly notes: readonly string[]
}

interface ArchivedSummary {
  readonly bytes: Uint8Array
  readonly parts: Parts
  readonly grid: Grid
  readonly summary: ReadSummary
}

async function compare(
  { bytes, parts, grid, summary }: ArchivedSummary,
  version: RunnableVersion,
  signature: SignatureState,
  kept: IssuedFiles | undefined,
): Promise<Compared> {
  const { record, evaluation: recorded, issuedParts } = summary
  const again = runAgain(version, record, recorded)
  const figures = compareEvaluations(recorded, again.evaluation, again.test)
  const fits = digestDifferences(summary, version)
  const archive = archiveDifferences(bytes)
  const verdict = again.evaluation.verdict.outcome
  const result = { figures: figures.figures, verdict, notes: [] }
  // The signature covers the digests of all parts: with it nothing has to be made again to be compared.
  const proven =
    signature.state === 'valid' &&
    issuedParts &&
    sameParts(issuedParts, digestParts(parts)) &&
    holdsIssuedRows(parts, issuedParts, summary.signature)
  const { differences } = figures
  if (proven && fits.length + archive.length === 0 && differences.every(({ rounding }) => rounding))
    return { ...result, asIssued: true, savedAgain: false, cells: countCells(parts), differences }
  const full = await compareInFull(parts, grid, summary, version, again, figures, fits, kept)
  return { ...result, ...full, differences: [...full.differences, ...archive] }
}

async function compareInFull(
  parts: Parts,
  grid: Grid,
  summary: ReadSummary,
  version: RunnableVersion,
  again: RunAgain,
  figures: ComparedFigures,
  fits: readonly Difference[],
  kept: IssuedFiles | undefined,
): Promise<ComparedFile & { notes: readonly string[]; verdict: string }> {
  const { record: inFile, evaluation: recorded } = summary
  let issued: IssuedFile = await keptOrIssued(
    kept,
    version,
    inFile,
    expectedOnSheets(recorded, again, figures),
    summary,
    parts,
  )
  let expected = again
  const origin = issuedRecord(summary, grid, issued.places, (candidate) =>
    candidate === inFile
      ? figures.differences.every(({ rounding }) => rounding)
      : gives(version, candidate, recorded),
  )
  const record = origin?.record ?? inFile
  if (origin && origin.changed.length > 0) {
    expected = runAgain(version, record, recorded)
    issued = await keptOrIssued(kept, version, record, expectedOnSheets(recorded, expected), summary, parts)
  }
  const context = { version, record, again: expected, recorded, places: issued.places }
  const file = compareFile(issued, grid, parts, summary)
  const evaluated =
    expected === again && figures.differences.length === 0
      ? figures
      : compareEvaluations(recorded, expected.evaluation, expected.test, issued.places)
  const cause = await withoutFollowing(file.differences, grid, context, issued)
  const inputs = changedFields(
    [
      ...(origin?.changed ?? []),
      ...cause.differences
        .filter(({ kind, rounding }) => kind === 'input' && !rounding)
        .flatMap(({ path, recorded: now, expected: was }) =>
          path !== undefined && now !== null && was !== null ? [{ path, issued: was, now }] : [],
        ),
    ],
    context,
    (path) => (origin?.changed.some((one) => one.path === path) ? 'Record' : fieldCell(issued.places, path)),
  )
  const named = new Set(inputs.map(({ path }) => path))
  const digests = origin && origin.changed.length > 0 ? [] : fits
  const explained = [...inputs, ...digests, ...evaluated.differences]
  const rest = cause.differences.filter(
    (one) =>
      !(one.kind === 'input' && !one.rounding && named.has(one.path)) &&
      !(explained.length > 0 && isData(one)),
  )
  return {
    ...file,
    verdict: expected.evaluation.verdict.outcome,
    differences: [
      ...explained,
      ...(rest.some((one) => !one.rounding && !isData(one)) ? rest.filter((one) => !isData(one)) : rest),
    ],
    notes: cause.following > 0 ? [followingNote(cause.following)] : [],
  }
}

/** Whether the recorded figures follow from a record. */
function gives(version: RunnableVersion, record: ReadSummary['record'], recorded: Evaluation): boolean {
  try {
    const { evaluation, test } = runAgain(version, record, recorded)
    return compareEvaluations(recorded, evaluation, test).differences.every(({ rounding }) => rounding)
  } catch {
    return false
  }
}

/** Data and digests on sheet Record: what was changed in them, or what changed them, stands in lines of its own. */
const isData = ({ cell, kind, label }: Difference): boolean =>
  kind === 'cell' &&
  cell !== undefined &&
  cell.startsWith(`${RECORD}!`) &&
  /^(record|evaluation|issued part|record digest|evaluation digest)\b/.test(label)

const followingNote = (count: number): string =>
  count === 1
    ? '1 cell changed because the inputs did; it is not listed'
    : `${count} cells changed because the inputs did; they are not listed`
