import type { TestLine } from './test-line.js'

/** A test in its place among the others of its house. */
export interface RegisterRow extends TestLine {
  /** Number in the register, from 1. */
  readonly row: number
  /** first test: of its stage · repeat: of an earlier one · duplicate: the same test again. */
  readonly role: 'first test' | 'repeat' | 'duplicate'
  /** Row of the test it repeats or doubles. */
  readonly of?: number
  /** Row of the test that took its place. */
  readonly supersededBy?: number
  /** Whether it stands for its house and stage: neither superseded nor a duplicate. */
  readonly counts: boolean
  /** What about its place needs a look. */
  readonly remark?: string
}

interface Draft {
  readonly line: TestLine
  role: RegisterRow['role']
  of?: Draft
  supersededBy?: Draft
  remark?: string
}

/**
 * Orders tests by site, plot and time, finds duplicates, and pairs each repeat with what it repeats: a test of the
 * same plot and stage repeats the one before; a retest repeats the latest test of its plot, whatever its stage.
 */
export function arrange(lines: readonly TestLine[]): RegisterRow[] {
  const ordered = lines.map((line): Draft => ({ line, role: 'first test' })).sort(byPlaceAndTime)
  for (const house of grouped(ordered, ({ line }) => houseOf(line)).values()) placeInHouse(house)
  const numbers = new Map(ordered.map((draft, i) => [draft, i + 1]))
  return ordered.map((draft): RegisterRow => {
    const { line, role, of, supersededBy, remark } = draft
    return {
      ...line,
      row: numbers.get(draft) ?? 0,
      role,
      ...(of && { of: numbers.get(of) ?? 0 }),
      ...(supersededBy && { supersededBy: numbers.get(supersededBy) ?? 0 }),
      counts: role !== 'duplicate' && !supersededBy,
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
  const byDigest = new Map<string, Draft>()
  const byNumber = new Map<string, Draft>()
  const latestOfStage = new Map<string, Draft>()
  let latest: Draft | undefined
  for (const test of tests) {
    const { line } = test
    const same = byDigest.get(line.recordDigest)
    if (same) {
      Object.assign(test, { role: 'duplicate', of: same, remark: 'same record as in another file' })
      continue
    }
    byDigest.set(line.recordDigest, test)
    const numbered = line.testNumber === undefined ? undefined : byNumber.get(line.testNumber)
    if (numbered) test.remark = 'same test number as another test of this plot, but different content'
    if (line.testNumber !== undefined) byNumber.set(line.testNumber, test)
    const stage = line.stage ?? ''
    const repeated = stage === 'retest' ? latest : (numbered ?? latestOfStage.get(stage))
    if (repeated) {
      test.role = 'repeat'
      test.of = repeated
      repeated.supersededBy = test
    } else if (stage === 'retest') test.remark = 'retest, but the repeated test is not in the register'
    // A retest continues the stage it repeats.
    latestOfStage.set(stage === 'retest' && latest ? stageOf(latest) : stage, test)
    latest = test
  }
}

/** The stage a test stands for: a retest's is that of what it repeats. */
const stageOf = ({ line, of }: Draft): string =>
  line.stage === 'retest' && of ? stageOf(of) : (line.stage ?? '')

export function grouped<Item>(items: readonly Item[], keyOf: (item: Item) => string): Map<string, Item[]> {
  const groups = new Map<string, Item[]>()
  for (const item of items) {
    const key = keyOf(item)
    const group = groups.get(key)
    if (group) group.push(item)
    else groups.set(key, [item])
  }
  return groups
}
