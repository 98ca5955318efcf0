import type { GivenHome } from '../../assessment/building/home.js'
import { counted } from '../../catalogue/words.js'
import type { Grid } from '../../log/grid/grid.js'
import { archivedParts } from '../../reports/archive/open-archived.js'
import type { SeveralParts } from '../../versions/version.js'
import { archiveDifferences } from '../archive-shape.js'
import { bad, type Difference, type RerunTest } from '../report.js'
import { compareCopied, compareWhole } from './compare-workbook.js'
import type { MadeOfTests, PartOf } from './made-of-tests.js'

/** A report on several tests, as it was read. */
export interface ReportFile {
  /** With the version that it is compared under, where that is not the current one. */
  readonly about: RerunTest
  readonly bytes: Uint8Array
  readonly grid: Grid
}

export interface Found {
  readonly part: PartOf
  readonly test: RerunTest | undefined
}

type Kind = MadeOfTests & { readonly pack: SeveralParts['packReport'] }

/**
 * The report against the same made again of its tests; where some of them are not given, against what it copies from the others.
 * @throws InputError where it cannot be made again
 */
export async function madeAgain(
  file: ReportFile,
  kind: Kind,
  found: readonly Found[],
): Promise<RerunTest | undefined> {
  const notGiven = found.filter(({ test }) => test === undefined).map(({ part }) => part.file)
  return notGiven.length > 0 ? ofSomeTests(file, kind, found, notGiven) : ofAllTests(file, kind, found)
}

async function ofAllTests(
  { about, bytes, grid }: ReportFile,
  kind: Kind,
  found: readonly Found[],
): Promise<RerunTest> {
  const { cells, savedAgain, differences } = await compareWhole(
    layOut(kind, grid, found),
    grid,
    archivedParts(bytes),
    { linked: [kind.copied.sheet], first: archiveDifferences(bytes), pack: kind.pack },
  )
  const real = differences.filter(({ rounding }) => !rounding)
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
    differences: first ? [...real, ...differences.filter(({ rounding }) => rounding)] : differences,
    notes: [
      `What was entered for the ${kind.words}, such as its name or its rule, is read from the file itself`,
      ...changedTests(found),
    ],
  }
}

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
  const { cells, differences } = compareCopied(layOut(kind, grid, used), grid, kind.copied, parts)
  const [first] = differences
  const missing = `the other tests it is made of are not among the files given (${listed(notGiven)})`
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

const underVersion = ({ calculationVersion: version }: RerunTest): string =>
  version === undefined ? '' : ` under calculation version ${version}`

function layOut(kind: Kind, grid: Grid, found: readonly Found[]) {
  const tests = found.flatMap(({ part, test }): GivenHome[] =>
    test?.given ? [{ file: part.given ?? part.file, ...test.given }] : [],
  )
  return kind.layOut(grid, tests)
}

const changedTests = (found: readonly Found[]): string[] => {
  const changed = found.flatMap(({ test }) => (test && bad.includes(test.outcome) ? [test.file] : []))
  return changed.length === 0
    ? []
    : [`${listed(changed)}: not as issued, so the comparison is with what the file says now`]
}

const placed = ({ label, cell }: Difference): string => (cell ? `${label} (${cell})` : label)

const NAMED = 3
const listed = (files: readonly string[]): string =>
  files.length > NAMED
    ? `${files.slice(0, NAMED).join(', ')} and ${files.length - NAMED} more`
    : files.join(', ')
