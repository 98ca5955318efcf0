import { type Draft, setCopiesAside } from './copies.js'
import { grouped } from './grouped.js'
import { isTest, type TestClass } from './test-classes.js'
import type { TestLine } from './test-line.js'

/** A test in its place among the others of its house. */
export interface RegisterRow extends TestLine {
  /** Number in the register, from 1. */
  readonly row: number
  /** Its class, as {@link testClasses} says. */
  readonly role: TestClass
  /** Row of the test it repeats or is a copy of. */
  readonly of?: number
  /** Row of the test that took its place. */
  readonly supersededBy?: number
  /** Whether it stands for its house and stage: a test of its own that no other took the place of. */
  readonly counts: boolean
  /** Whether it is the last test of its plot among all files given. */
  readonly latest: boolean
  /** What about its place needs a look. */
  readonly remark?: string
}

/**
 * Orders tests by site, plot and time, sets copies aside, and pairs each repeat with what it repeats: a test of the
 * same plot and stage repeats the one before; a retest repeats the latest test of its plot, whatever its stage.
 */
export function arrange(lines: readonly TestLine[]): RegisterRow[] {
  const ordered = lines
    .map((line): Draft => ({ line, role: line.altered === undefined ? 'first test' : 'altered' }))
    .sort(byPlaceAndTime)
  setCopiesAside(ordered)
  const tests = ordered.filter(({ aside }) => !aside)
  for (const house of grouped(tests, ({ line }) => houseOf(line)).values()) placeInHouse(house)
  const numbers = new Map(ordered.map((draft, i) => [draft, i + 1]))
  return ordered.map((draft): RegisterRow => {
    const { line, role, of, supersededBy, latest = false, remark } = draft
    return {
      ...line,
      row: numbers.get(draft) ?? 0,
      role,
      ...(of && { of: numbers.get(of) ?? 0 }),
      ...(supersededBy && { supersededBy: numbers.get(supersededBy) ?? 0 }),
      counts: isTest(role) && !supersededBy,
      latest,
      ...(remark !== undefined && { remark }),
    }
  })
}

/** Same site and plot, however they are capitalised. */
export const houseOf = ({ site, building }: Pick<TestLine, 'site' | 'building'>): string =>
  `${(site ?? '').toLocaleLowerCase('en')}|${building.toLocaleLowerCase('en')}`

const collator = new Intl.Collator('en', { numeric: true, sensitivity: 'base' })

function byPlaceAndTime({ line: a }: Draft, { line: b }: Draft): number {
  return (
    collator.compare(a.site ?? '', b.site ?? '') ||
    collator.compare(a.building, b.building) ||
    (a.date < b.date ? -1 : a.date > b.date ? 1 : 0) ||
    // A retest of the same day comes after what it repeats.
    Number(a.stage === 'retest') - Number(b.stage === 'retest') ||
    collator.compare(a.testNumber ?? '', b.testNumber ?? '') ||
    (a.file < b.file ? -1 : a.file > b.file ? 1 : 0) ||
    collator.compare(a.part ?? '', b.part ?? '')
  )
}

/** @param tests - of one house, in the order of time */
function placeInHouse(tests: readonly Draft[]): void {
  const byNumber = new Map<string, Draft>()
  const latestOfStage = new Map<string, Draft>()
  let latest: Draft | undefined
  for (const test of tests) {
    const { line } = test
    const numbered = line.testNumber === undefined ? undefined : byNumber.get(line.testNumber)
    if (numbered) test.remark = 'same test number as another test of this plot, but different content'
    if (line.testNumber !== undefined) byNumber.set(line.testNumber, test)
    const stage = line.stage ?? ''
    const repeated = stage === 'retest' ? latest : (numbered ?? latestOfStage.get(stage))
    if (repeated) {
      test.of = repeated
      if (line.altered === undefined) {
        test.role = 'repeat'
        supersede(repeated, test)
      }
    } else if (stage === 'retest' && line.altered === undefined) {
      test.role = 'retest without its first test'
      test.remark = 'retest, but the repeated test is not among the files'
    }
    // A retest continues the stage it repeats.
    latestOfStage.set(stage === 'retest' && latest ? stageOf(latest) : stage, test)
    latest = test
  }
  const last = tests.findLast(({ role }) => isTest(role))
  if (last) last.latest = true
}

/** An altered test takes no other's place, so what it repeats is superseded by the test after it. */
function supersede(earlier: Draft, by: Draft): void {
  earlier.supersededBy = by
  if (earlier.role === 'altered' && earlier.of) supersede(earlier.of, by)
}

/** The stage a test stands for: a retest's is that of what it repeats. */
const stageOf = ({ line, of }: Draft): string =>
  line.stage === 'retest' && of ? stageOf(of) : (line.stage ?? '')
