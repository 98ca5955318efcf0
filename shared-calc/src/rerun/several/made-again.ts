import type { GivenHome } from '../../assessment/building/home.js'
import { counted, firstFew } from '../../catalogue/words.js'
import { problemsOf } from '../../contract/problem.js'
import { addressOf, withSheet } from '../../log/grid/address.js'
import type { Grid } from '../../log/grid/grid.js'
import type { SeveralParts } from '../../versions/version.js'
import { archiveDifferences } from '../archive-shape.js'
import { bad, type Difference, type RerunTest } from '../report.js'
import {
  type ComparedParts,
  type ComparedWorkbook,
  compareCopied,
  compareWhole,
  fewestDifferences,
} from './compare-workbook.js'
import { asInCells, asInResults, type Entered } from './entered.js'
import type { MadeOfTests, PartOf } from './made-of-tests.js'

/** A report on several tests, as it was read. */
export interface ReportFile {
  /** With the version that it is compared under, where that is not the current one. */
  readonly about: RerunTest
  readonly bytes: Uint8Array
  readonly grid: Grid
  readonly seen: ComparedParts
}

export interface Found {
  readonly part: PartOf
  readonly test: RerunTest | undefined
  /** It is that of the same plot and date: no file of the name is among those given. */
  readonly renamed?: true
}

type Kind = MadeOfTests & { readonly pack: SeveralParts['packReport'] }

/**
 * The report against the same made again of its tests; where some of them are not given, against what it copies from the others.
 * @param most - undefined where it has so many differences or more
 * @throws InputError where it cannot be made again
 */
export async function madeAgain(
  file: ReportFile,
  kind: Kind,
  found: readonly Found[],
  most: number,
): Promise<RerunTest | undefined> {
  const notGiven = found.filter(({ test }) => test === undefined).map(({ part }) => part.file)
  return notGiven.length > 0 ? ofSomeTests(file, kind, found, notGiven) : ofAllTests(file, kind, found, most)
}

async function ofAllTests(
  file: ReportFile,
  kind: Kind,
  found: readonly Found[],
  most: number,
): Promise<RerunTest | undefined> {
  const { about, grid } = file
  const compared = await likest(file, kind, found, most)
  if (compared === TOO_MANY) return undefined
  const { cells, savedAgain, differences } = compared
  const real = differences.filter(isReal)
  const [first, ...more] = real
  const made = `made again from its ${counted(found.length, 'test')}${underVersion(about)}`
  const saved = savedAgain === undefined ? '' : `; saved again${savedAgain && ` by ${savedAgain}`}`
  return {
    ...about,
    ...(first
      ? {
          outcome: 'differs',
          why: `${made}, it has ${counted(real.length, 'difference')}: ${placed(first)}${more.length > 0 ? ', …' : ''}`,
        }
      : {
          outcome: about.calculationVersion === undefined ? 'agrees' : 'older calculation version',
          why: `${made}, every figure and everything visible agrees${saved}`,
        }),
    compared: { figures: found.length, cells },
    differences: first ? [...real, ...differences.filter((one) => !isReal(one))] : differences,
    notes: [enteredNote(kind, grid), ...changedTests(found)],
  }
}

/**
 * Made again with what was entered, as its cells say. Where that does not agree, one of those cells may have been changed: then as the rest
 * of the file says, if that agrees better; where it agrees as well, either may have been changed, and both are listed.
 * @param most - so many differences or more are too many: then they need not be known
 */
async function likest(
  { bytes, grid, seen }: ReportFile,
  kind: Kind,
  found: readonly Found[],
  most: number,
): Promise<Likeness> {
  const first = [...otherFiles(kind, found), ...archiveDifferences(bytes)]
  const options = { linked: [kind.copied.sheet], first, pack: kind.pack }
  const compare = async (entered: Entered, fewer: number) => {
    const made = layOut(kind, grid, found, entered)
    if (fewestDifferences(made, grid, first) >= fewer) return TOO_MANY
    return compareWhole(made, grid, seen, options)
  }
  const cells = asInCells(grid)
  const byCells = await compare(cells, most).catch(unusable)
  if (byCells && count(byCells) === 0) return byCells
  const byResults = await compare(asInResults(grid, seen.parts()), most).catch(byCells ? unusable : undefined)
  let best = likelier(byCells, byResults)
  // Where another version had few differences, none of them points to such a cell.
  if (count(best) < MANY || most < MANY) return best
  for (const guess of kind.guesses?.(grid) ?? []) {
    const guessed = await compare({ ...cells, guess }, Math.min(most, count(best))).catch(unusable)
    if (guessed && count(guessed) < count(best)) best = guessed
  }
  return best
}

type Likeness = ComparedWorkbook | typeof TOO_MANY
const TOO_MANY = 'too many'

const count = (compared: Likeness): number =>
  compared === TOO_MANY ? Number.POSITIVE_INFINITY : compared.differences.filter(isReal).length

/** At least one of them is given. */
function likelier(byCells: Likeness | undefined, byResults: Likeness | undefined): Likeness {
  if (!byCells || !byResults) return byCells ?? byResults ?? TOO_MANY
  if (byCells === TOO_MANY || byResults === TOO_MANY || count(byCells) !== count(byResults))
    return count(byResults) < count(byCells) ? byResults : byCells
  return { ...byCells, differences: bothOf(byCells.differences, byResults.differences) }
}

/** Differences that point to a cell on which all the others depend. */
const MANY = 10

function bothOf(one: readonly Difference[], other: readonly Difference[]): Difference[] {
  const keyOf = ({ kind, label, cell, recorded, expected }: Difference) =>
    JSON.stringify([kind, label, cell, recorded, expected])
  const known = new Set(one.map(keyOf))
  return [...one, ...other.filter((difference) => !known.has(keyOf(difference)))]
}

const isReal = ({ rounding }: Difference): boolean => !rounding

function unusable(error: unknown): undefined {
  if (problemsOf(error) === undefined) throw error
}

/** Rows whose file is not among those given, compared with the test of the same plot and date. */
const otherFiles = ({ copied }: Kind, found: readonly Found[]): Difference[] =>
  found.flatMap(({ part, test, renamed }) =>
    renamed && test && part.row !== undefined
      ? [
          {
            kind: 'cell',
            label: `file of ${part.plot}`,
            cell: withSheet(copied.sheet, addressOf(part.row - 1, copied.file - 1)),
            recorded: part.file,
            expected: test.file,
            rounding: false,
          },
        ]
      : [],
  )

/** The figures that are copied from the tests given; what is worked out from all of them cannot be checked. */
function ofSomeTests(
  { about, grid }: ReportFile,
  kind: Kind,
  found: readonly Found[],
  notGiven: readonly string[],
): RerunTest | undefined {
  const used = found.filter(({ test, part }) => test !== undefined && part.row !== undefined)
  if (used.length < LEAST) return undefined
  const parts = used.map(({ part }) => part)
  const { cells, differences } = compareCopied(
    layOut(kind, grid, used, asInCells(grid)),
    grid,
    kind.copied,
    parts,
  )
  const [first] = differences
  const missing = `the other tests it is made of are not among the files given (${firstFew(notGiven)})`
  const tests = counted(used.length, 'test')
  return {
    ...about,
    outcome: first ? 'differs' : 'cannot be read',
    why: first
      ? `${counted(differences.length, 'difference')}${underVersion(about)}: ${placed(first)}; ${missing}`
      : `only the figures copied from ${tests} could be checked, and they agree: ${missing}`,
    compared: { figures: used.length, cells },
    differences,
    notes: changedTests(found),
  }
}

/** A building has at least two homes. */
const LEAST = 2

export const enteredNote = ({ words, entered }: MadeOfTests, grid: Grid): string =>
  `What was entered for the ${words} is read from the file itself and cannot be checked: ${entered(grid).join(', ')}`

const underVersion = ({ calculationVersion: version }: RerunTest): string =>
  version === undefined ? '' : ` under calculation version ${version}`

function layOut(kind: Kind, grid: Grid, found: readonly Found[], entered: Entered) {
  const tests = found.flatMap(({ part, test }): GivenHome[] =>
    test?.given ? [{ file: part.given ?? part.file, ...test.given }] : [],
  )
  return kind.layOut(grid, tests, entered)
}

const changedTests = (found: readonly Found[]): string[] => {
  const changed = found.flatMap(({ test }) => (test && bad.includes(test.outcome) ? [test.file] : []))
  return changed.length === 0
    ? []
    : [`${firstFew(changed)}: not as issued, so the comparison is with what the file says now`]
}

const placed = ({ label, cell }: Difference): string => (cell ? `${label} (${cell})` : label)
