import { bytesToHex, hexToBytes } from '@noble/hashes/utils.js'
import { CALCULATION_VERSION } from '../../catalogue/calculation-version.js'
import { problemsOf } from '../../contract/problem.js'
import { problemsInWords } from '../../contract/record/index.js'
import type { Grid } from '../../log/grid/grid.js'
import { openLog } from '../../log/open-log.js'
import { archivedParts } from '../../reports/archive/open-archived.js'
import { versionIn } from '../../reports/workbook/new-workbook.js'
import { versions } from '../../versions/list.js'
import { isNewer, unknownVersion } from '../../versions/unknown-version.js'
import { type KnownVersion, severalOf } from '../../versions/version.js'
import { isOfRow, testNamed } from '../named-test.js'
import { type RerunTest, unreadable } from '../report.js'
import { buildingAgain } from './building-again.js'
import { comparedParts } from './compare-workbook.js'
import { enteredNote, type Found, madeAgain, type ReportFile } from './made-again.js'
import type { PartOf } from './made-of-tests.js'
import { stagesAgain } from './stages-again.js'

/** Reads a report on several tests for a re-run: it is compared once those tests are known. */
export const rerunSeveral = (
  file: string,
  bytes: Uint8Array,
  kind: 'building' | 'stages' | 're-run',
): RerunTest => ({
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

/**
 * A building or stages against the tests of the same re-run: made again of them by the calculation version that it was made under, every
 * cell, formula and everything visible must be the same. Where only some of its tests are given, the figures copied from those are
 * compared. Undefined where there is nothing to compare.
 */
export async function compareSeveral(
  report: RerunTest,
  given: readonly RerunTest[],
): Promise<RerunTest | undefined> {
  const { bytes: hex, ...about } = report
  if (hex === undefined) return about
  try {
    return await compareFile(about, hex, given)
  } catch (error) {
    const problems = problemsOf(error)
    if (problems === undefined) throw error
    // A sheet is read when it is first asked for: one that is damaged shows here.
    return { ...about, ...unreadable(about.file, problemsInWords(problems)) }
  }
}

async function compareFile(
  about: RerunTest,
  hex: string,
  given: readonly RerunTest[],
): Promise<RerunTest | undefined> {
  const bytes = hexToBytes(hex)
  const grid = openLog(bytes, about.file)
  const tests = given.filter((test) => test.given !== undefined)
  const file = { about, bytes, grid, seen: comparedParts(() => archivedParts(bytes)) }
  const stated = versionOf(grid)
  const named = versions.filter(({ version }) => version === stated)
  const first = await fewest(file, named, tests)
  if (first && realOf(first) === 0) return first
  // The line that names its version may have been changed, or taken out.
  const others = versions.filter((one) => !named.includes(one) && isLaterThanTests(one, tests))
  const found = await fewest(file, others, tests, first)
  if (found || stated === undefined || !isNewer(stated)) return found
  return { ...about, ...unreadable(about.file, unknownVersion(stated)) }
}

/** How many differences it has; one that cannot be made again has a single one, and is no match. */
const realOf = ({ compared, differences }: RerunTest): number =>
  compared.cells === 0 ? Number.MAX_SAFE_INTEGER : differences.filter(({ rounding }) => !rounding).length

/** A report cannot be made of tests of a later version. */
function isLaterThanTests(known: KnownVersion, tests: readonly RerunTest[]): boolean {
  const at = versions.indexOf(known)
  return tests.every(
    ({ calculationVersion }) => versions.findIndex(({ version }) => version === calculationVersion) <= at,
  )
}

/** The comparison under that one of some versions from which it differs least. @param best - one known already, which is as good */
async function fewest(
  file: ReportFile,
  known: readonly KnownVersion[],
  tests: readonly RerunTest[],
  best?: RerunTest,
): Promise<RerunTest | undefined> {
  let least = best
  for (const one of known) {
    const most = least === undefined ? Number.POSITIVE_INFINITY : realOf(least)
    const compared = await under(file, one, tests, most)
    if (compared && (least === undefined || realOf(compared) < most)) least = compared
    if (compared && realOf(compared) === 0) break
  }
  return least
}

/** @param most - undefined where it has so many differences or more */
async function under(
  file: ReportFile,
  known: KnownVersion,
  tests: readonly RerunTest[],
  most: number,
): Promise<RerunTest | undefined> {
  const several = await severalOf(known)
  if (!several) return undefined
  const kind = file.about.kind === 'building' ? buildingAgain(several.building) : stagesAgain(several.stages)
  const about = {
    ...file.about,
    ...(known.version !== CALCULATION_VERSION && { calculationVersion: known.version }),
  }
  try {
    const found = testsOf(kind.parts(file.grid, file.seen.parts()), tests)
    if (found.every(({ test }) => test === undefined)) return undefined
    return await madeAgain({ ...file, about }, { ...kind, pack: several.packReport }, found, most)
  } catch (error) {
    const problems = problemsOf(error)
    if (problems === undefined) throw error
    const reasons = problemsInWords(problems)
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
      notes: [enteredNote(kind, file.grid)],
    }
  }
}

/** The tests that the rows name. Where no file of the name is given, the one that is not named by another row and has its plot and date. */
function testsOf(parts: readonly PartOf[], tests: readonly RerunTest[]): Found[] {
  const named = parts.map((part) => testNamed(part, tests))
  return parts.map((part, i): Found => {
    const test = named[i]
    if (test) return { part, test }
    const [alike, ...more] = tests.filter((one) => !named.includes(one) && isOfRow(one, part))
    return alike && more.length === 0 ? { part, test: alike, renamed: true } : { part, test: undefined }
  })
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
