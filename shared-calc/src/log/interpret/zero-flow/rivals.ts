import type { FoundRun } from '../tables/runs.js'
import { directionOf } from '../tests/test-group.js'
import type { Assigned } from './assign.js'
import type { ZeroEntry } from './entry.js'
import { isAlike, placeOf } from './place.js'

/** Another way to read the zero flow of a run, which the log allows as well as the one taken. */
export interface Rival {
  readonly which: 'before' | 'after'
  /** What was read for the other run and may be of this one; none where only the other run has any of this moment. */
  readonly instead: ZeroEntry | undefined
}

/**
 * Other ways to give the zero flow of a log to the two runs of a test. There is none where a word names the run, where each run has its
 * own at the same place, or where one line or column holds those of both in their order. That one run has zero flow of a moment and the
 * other has none is a doubt too: both are logged alike.
 */
export function rivalsOf(run: FoundRun, runs: readonly FoundRun[], assigned: Assigned): Rival[] {
  const other = runs.find((one) => one !== run)
  if (!other || runs.length !== 2 || assigned.get(run)?.shared || assigned.get(other)?.shared) return []
  return (['before', 'after'] as const).flatMap((which): Rival[] => {
    const mine = assigned.get(run)?.[which]
    const theirs = assigned.get(other)?.[which]
    if (mine && theirs && mine !== theirs && !isEven(run, mine, other, theirs))
      return [{ which, instead: theirs }]
    return isUneven(run, other, assigned, which) ? [{ which, instead: undefined }] : []
  })
}

const has = (run: FoundRun, assigned: Assigned, which: 'before' | 'after'): boolean =>
  (which === 'before' ? run.zeroBefore : run.zeroAfter).length > 0 || assigned.get(run)?.[which] !== undefined

/** Whether the other run has both and this one has only one of them. */
function isUneven(run: FoundRun, other: FoundRun, assigned: Assigned, which: 'before' | 'after'): boolean {
  const opposite = which === 'before' ? 'after' : 'before'
  return (
    !has(run, assigned, which) &&
    has(run, assigned, opposite) &&
    has(other, assigned, which) &&
    has(other, assigned, opposite)
  )
}

/** Whether both runs have theirs by a word, or by one rule. */
function isEven(one: FoundRun, mine: ZeroEntry, other: FoundRun, theirs: ZeroEntry): boolean {
  if (isNamed(one, mine) && isNamed(other, theirs)) return true
  if (mine.view.name !== theirs.view.name)
    return one.view.name === mine.view.name && other.view.name === theirs.view.name
  if (isAlike(placeOf(one, mine), placeOf(other, theirs))) return true
  if (isRightOver(one, mine, other) && isRightOver(other, theirs, one)) return true
  const inLine = mine.row === theirs.row || mine.column === theirs.column
  const [first, second] = areBeside(one, other)
    ? [startOf(one), { ...startOf(other), row: startOf(one).row }]
    : [startOf(one), startOf(other)]
  return inLine && orderOf(mine, theirs) === orderOf(first, second)
}

/** Two tables side by side: the headings of one may stand some rows further down. */
const areBeside = (one: FoundRun, other: FoundRun): boolean =>
  [one, other].every(({ view }) => !view.turned && view.name === one.view.name) &&
  (one.right < other.left || one.left > other.right) &&
  one.top <= other.bottom &&
  one.bottom >= other.top

/** In the columns of its run, above it, with no other run between. */
const isRightOver = (run: FoundRun, { view, row, column }: ZeroEntry, other: FoundRun): boolean =>
  !run.view.turned &&
  view.name === run.view.name &&
  view.name === other.view.name &&
  row < run.top &&
  column >= run.left &&
  column <= run.right + BESIDE &&
  (other.bottom < row || other.top > run.bottom)

/** Lines over a table may be a little wider than it. */
const BESIDE = 3

const orderOf = (first: { row: number; column: number }, second: { row: number; column: number }): number =>
  Math.sign(first.row - second.row) || Math.sign(first.column - second.column)

const startOf = ({ view, top, left }: FoundRun) =>
  view.turned ? { row: left, column: top } : { row: top, column: left }

/** Its direction, its test or its rows name the run. */
const isNamed = (run: FoundRun, entry: ZeroEntry): boolean =>
  entry.run === run ||
  (entry.direction !== undefined && entry.direction === directionOf(run)) ||
  (entry.ofHouse?.length === 1 && entry.ofHouse[0] === run) ||
  (entry.test !== undefined && entry.test === run.test)
