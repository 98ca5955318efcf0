import { bytesToHex, hexToBytes } from '@noble/hashes/utils.js'
import type { Workbook } from 'exceljs'
import type { GivenHome } from '../../assessment/building/home.js'
import { CALCULATION_VERSION } from '../../catalogue/calculation-version.js'
import { counted } from '../../catalogue/words.js'
import { InputError } from '../../contract/problem.js'
import { problemsInWords } from '../../contract/record/index.js'
import type { Grid } from '../../log/grid/grid.js'
import { openLog } from '../../log/open-log.js'
import { archivedParts } from '../../reports/archive/open-archived.js'
import { versionIn } from '../../reports/workbook/new-workbook.js'
import { archiveDifferences } from '../archive-shape.js'
import { testNamed } from '../named-test.js'
import { bad, type Difference, type RerunTest } from '../report.js'
import { buildingAgain } from './building-again.js'
import { compareEarlier } from './compare-earlier.js'
import { compareCopied, compareWhole } from './compare-workbook.js'
import type { MadeOfTests, PartOf } from './made-of-tests.js'
import { stagesAgain } from './stages-again.js'

const kinds = { building: buildingAgain, stages: stagesAgain } as const

/** Reads a building or stages for a re-run: they are compared once the tests that they are made of are known. */
export const rerunSeveral = (file: string, bytes: Uint8Array, kind: 'building' | 'stages'): RerunTest => ({
  file,
  kind,
  outcome: 'agrees',
  why: '',
  compared: { figures: 0, cells: 0 },
  differences: [],
  sinceIssue: [],
  notes: [],
  bytes: bytesToHex(bytes),
})

interface Found {
  readonly part: PartOf
  readonly test: RerunTest | undefined
}

/**
 * A building or stages against the tests of the same re-run: made again of them, every cell, formula and everything visible must be
 * the same. Where only some of its tests are given, or where it was made under another calculation version, whose sheets were laid out
 * otherwise, the figures copied from the tests are compared. Undefined where there is nothing to compare.
 */
export async function compareSeveral(
  report: RerunTest,
  given: readonly RerunTest[],
): Promise<RerunTest | undefined> {
  const { bytes: hex, ...about } = report
  const kind = about.kind === 'building' || about.kind === 'stages' ? kinds[about.kind] : undefined
  if (hex === undefined || !kind) return about
  try {
    const bytes = hexToBytes(hex)
    const grid = openLog(bytes, about.file)
    const tests = given.filter((test) => test.given !== undefined)
    const found = kind.parts(grid, bytes).map((part): Found => ({ part, test: testNamed(part, tests) }))
    if (found.every(({ test }) => test === undefined)) return undefined
    const version = versionOf(grid)
    const whole = async () => ofAllTests(about, kind, grid, bytes, found)
    if (version === undefined && found.every(({ test }) => test)) {
      // The line that names the version may have been taken out: then nearly all is as this version writes it.
      const made = await whole()
      if (made.differences.length < OF_THIS_VERSION * made.compared.cells) return made
    }
    if (version !== CALCULATION_VERSION) return ofEarlier(about, kind, grid, found, version)
    const notGiven = found.filter(({ test }) => test === undefined).map(({ part }) => part.file)
    return notGiven.length > 0 ? ofSomeTests(about, kind, grid, found, notGiven) : await whole()
  } catch (error) {
    if (!(error instanceof InputError)) throw error
    const reasons = problemsInWords(error.problems)
    return {
      ...about,
      outcome: 'differs',
      why: `it cannot be made again from its tests: ${reasons}`,
      differences: [
        {
          kind: 'evaluation',
          label: 'made again from its tests',
          recorded: null,
          expected: reasons,
          rounding: false,
        },
      ],
    }
  }
}

/** Share of the cells of which a report of an earlier version has more differences from one made again. */
const OF_THIS_VERSION = 0.1

async function ofAllTests(
  about: RerunTest,
  kind: MadeOfTests,
  grid: Grid,
  bytes: Uint8Array,
  found: readonly Found[],
): Promise<RerunTest> {
  const { cells, savedAgain, differences } = await compareWhole(
    layOut(kind, grid, found),
    grid,
    archivedParts(bytes),
    { linked: [kind.copied.sheet], first: archiveDifferences(bytes) },
  )
  const real = differences.filter(({ rounding }) => !rounding)
  const [first, ...more] = real
  const made = `made again from its ${counted(found.length, 'test')}`
  const saved = savedAgain === undefined ? '' : `; saved again${savedAgain && ` by ${savedAgain}`}`
  return {
    ...about,
    ...(first
      ? {
          outcome: 'differs',
          why: `${made}, it has ${counted(real.length, 'difference')}: ${placed(first)}${more.length > 0 ? ', …' : ''}`,
        }
      : {
          outcome: 'agrees',
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
  about: RerunTest,
  kind: MadeOfTests,
  grid: Grid,
  found: readonly Found[],
  notGiven: readonly string[],
): RerunTest | undefined {
  const missing = `the other tests it is made of are not among the files given (${listed(notGiven)})`
  return ofCopied(about, kind, grid, found, compareCopied, {
    outcome: 'cannot be read',
    agree: (tests) => `only the figures copied from ${tests} could be checked, and they agree: ${missing}`,
    why: missing,
  })
}

/** The same under another version: how it looks and what is worked out from all its tests cannot be checked. */
function ofEarlier(
  about: RerunTest,
  kind: MadeOfTests,
  grid: Grid,
  found: readonly Found[],
  version: string | undefined,
): RerunTest | undefined {
  const under =
    version === undefined
      ? 'it names no calculation version, so it was made before 1.5.0'
      : `it was made under calculation version ${version}`
  const named = version === undefined ? about : { ...about, calculationVersion: version }
  return ofCopied(named, kind, grid, found, compareEarlier, {
    outcome: 'older calculation version',
    agree: (tests) =>
      `${under}: the figures copied from ${tests} agree; what is calculated from them, and how it looks, was not compared`,
    why: under,
  })
}

interface Said {
  /** Where the copied figures agree, the outcome and one sentence on it, from `3 tests`. */
  readonly outcome: RerunTest['outcome']
  readonly agree: (tests: string) => string
  /** Why no more is compared. */
  readonly why: string
}

function ofCopied(
  about: RerunTest,
  kind: MadeOfTests,
  grid: Grid,
  found: readonly Found[],
  compare: typeof compareCopied,
  { outcome, agree, why }: Said,
): RerunTest | undefined {
  const used = found.filter(({ test, part }) => test !== undefined && part.row !== undefined)
  if (used.length < LEAST) return undefined
  const parts = used.map(({ part }) => part)
  const { cells, differences } = compare(layOut(kind, grid, used), grid, kind.copied, parts)
  const [first] = differences
  return {
    ...about,
    outcome: first ? 'differs' : outcome,
    why: first
      ? `${counted(differences.length, 'difference')}: ${placed(first)}; ${why}`
      : agree(counted(used.length, 'test')),
    compared: { figures: used.length, cells },
    differences,
    notes: changedTests(found),
  }
}
/** A building has at least two homes. */
const LEAST = 2

function layOut(kind: MadeOfTests, grid: Grid, found: readonly Found[]): Workbook {
  const tests = found.flatMap(({ part, test }): GivenHome[] =>
    test?.given ? [{ file: part.given ?? part.file, ...test.given }] : [],
  )
  return kind.layOut(grid, tests)
}

/** What the file says it was made under. */
function versionOf({ sheetNames, sheet }: Grid): string | undefined {
  for (const name of sheetNames) {
    const found = sheet(name)
    for (let row = (found?.rows ?? 0) - 1; row >= 0; row -= 1) {
      const version = versionIn(String(found?.at(row, 0)?.value ?? ''))
      if (version !== undefined) return version
    }
  }
  return undefined
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
