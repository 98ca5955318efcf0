import { evaluate } from '../../assessment/evaluate.js'
import { counted } from '../../catalogue/words.js'
import { InputError, type Problem } from '../../contract/problem.js'
import { problemsInWords } from '../../contract/record/index.js'
import type { Grid } from '../../log/grid/grid.js'
import type { Layout } from '../../log/layout/schema.js'
import { ownReport } from '../../log/own-report.js'
import { type LogTest, readGrid } from '../../log/read-log.js'
import { archivedParts, layoutOf, NOT_A_SUMMARY, openArchived } from '../archive/open-archived.js'
import { sheetParts } from '../workbook/chart/package-parts.js'
import { CHECK } from '../workbook/check-sheet.js'
import { digestParts, type IssuedParts, savedAgain } from '../workbook/issued/issued-parts.js'
import { partWords } from '../workbook/issued/part-words.js'
import type { ReadSummary } from '../workbook/read-summary.js'
import type { Parts } from '../workbook/zip/parts.js'
import { type BuildingLine, buildingLine } from './building-line.js'
import { lineOf, type TestLine } from './test-line.js'

/** What came of reading one file: its tests, and why others in it could not be read. */
export interface ReadLines {
  readonly lines: readonly TestLine[]
  /** A file, or a test of it, that is not in the register. */
  readonly leftOut: readonly LeftOut[]
}
export const leftOutKinds = [
  'other month',
  'temporary or hidden file',
  'other format',
  'own report',
  'link',
] as const
export type LeftOutKind = (typeof leftOutKinds)[number]

export interface LeftOut {
  readonly file: string
  readonly part?: string
  readonly why: string
  /** It was never meant to be read: a picture, another month's test, a Draughtbook register. */
  readonly expected?: true
  /** Why it was never meant to be read, in a word. */
  readonly kind?: LeftOutKind
  /** What the workbook of a building of several homes shows. */
  readonly building?: BuildingLine
}

/**
 * Reads the tests of one file: recorded figures of a summary workbook, or a log by one of the layouts, evaluated.
 * Never throws for a file that cannot be read: it is left out, with the reason.
 */
export function readLines(bytes: Uint8Array, file: string, layouts: readonly Layout[] = []): ReadLines {
  try {
    const { grid, summary } = openArchived(bytes, file)
    return summary
      ? { lines: [ofSummary(file, summary, grid, bytes)], leftOut: [] }
      : ofLog(file, grid, layouts)
  } catch (error) {
    if (!(error instanceof InputError)) throw error
    return { lines: [], leftOut: [{ file, why: problemsInWords(error.problems) }] }
  }
}

function ofSummary(file: string, summary: ReadSummary, grid: Grid, bytes: Uint8Array): TestLine {
  const altered = alteration(summary, grid, () => archivedParts(bytes))
  return lineOf(
    { file, source: 'summary workbook', ...(altered !== undefined && { altered }) },
    summary.record,
    summary.evaluation,
  )
}

/** Why a test of a log has no record: faults, and what its layout's answers leave open. */
export const standingInTheWay = ({ problems, questions }: LogTest): Problem[] => [
  ...problems,
  ...questions.map(({ path, text, cells: [cell] }) => ({
    path,
    message: text,
    ...(cell !== undefined && { cell }),
  })),
]

/**
 * What tells that a summary is not as issued, by its digests and sheet Check. Where another program has saved the whole file, no part has
 * the digest of its issue: what such a file shows is compared by a re-run alone.
 * @param parts - all parts of the file; asked for only where its digests and sheet Check tell nothing. May throw LogError
 */
export function alteration(
  { digests, evaluation, issuedParts }: ReadSummary,
  grid: Grid,
  parts: () => Parts,
): string | undefined {
  const { record } = digests
  if (record.written !== record.found || evaluation.recordDigest !== record.found)
    return 'the record was changed after issue'
  if (digests.evaluation.written !== digests.evaluation.found) return 'the evaluation was changed after issue'
  const differing = grid.sheetNames.includes(CHECK) ? grid.sheet(CHECK)?.at(1, 1)?.value : undefined
  if (differing === undefined) return 'sheet Check is missing'
  return differing === 0
    ? issuedParts && changedParts(issuedParts, parts())
    : `${counted(Number(differing), 'cell was', 'cells were')} edited after issue (sheet Check)`
}

/** Parts whose digest is not that of their issue, in words. */
function changedParts(issued: IssuedParts, parts: Parts): string | undefined {
  const now = digestParts(parts)
  const changed = [...new Set([...issued.keys(), ...now.keys()])].filter(
    (path) => issued.get(path) !== now.get(path),
  )
  if (changed.length === 0 || savedAgain(issued, now)) return undefined
  const sheets = new Map([...sheetParts(parts)].map(([name, path]) => [path, name]))
  const words = [...new Set(changed.map((path) => partWords(path, sheets.get(path))))]
  return `the file was changed after issue (${words.slice(0, MOST_NAMED).join(', ')}${words.length > MOST_NAMED ? ', …' : ''})`
}
const MOST_NAMED = 3

function ofLog(file: string, grid: Grid, layouts: readonly Layout[]): ReadLines {
  const own = ownReport(grid)
  if (own !== undefined) {
    const building = buildingLine(grid)
    const left = { file, why: own, expected: true, kind: 'own report' } as const
    return { lines: [], leftOut: [{ ...left, ...(building && { building }) }] }
  }
  if (!layoutOf(grid, layouts)) return { lines: [], leftOut: [{ file, why: NOT_A_SUMMARY }] }
  const { tests, problems } = readGrid(grid, { layouts })
  if (tests.length === 0) return { lines: [], leftOut: [{ file, why: problemsInWords(problems) }] }
  const several = tests.length > 1
  const lines: TestLine[] = []
  const leftOut: LeftOut[] = []
  for (const [i, test] of tests.entries()) {
    const part = several ? { part: `test ${i + 1}` } : {}
    try {
      if (!test.record) throw new InputError(standingInTheWay(test))
      const evaluation = evaluate(test.record, { cells: test.cells, findings: test.findings })
      lines.push(lineOf({ file, ...part, source: 'own layout' }, test.record, evaluation))
    } catch (error) {
      if (!(error instanceof InputError)) throw error
      leftOut.push({ file, ...part, why: problemsInWords(error.problems) })
    }
  }
  return { lines, leftOut }
}
