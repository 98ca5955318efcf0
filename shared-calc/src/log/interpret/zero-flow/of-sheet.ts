import { takenFrom } from '../fields/labels-behind.js'
import { fromTheRight, type Mirrored } from '../grid/mirrored.js'
import type { View } from '../grid/view.js'
import type { Stopped } from '../not-searched.js'
import type { FoundRun } from '../tables/runs.js'
import type { ZeroEntry } from './entry.js'
import { findZeroFlow } from './find-labelled.js'
import { zeroFlowInRemarks } from './in-remarks.js'

type IsTaken = (row: number, column: number) => boolean

/**
 * The labelled zero-flow values of a sheet: beside and below their labels, or where its labels stand behind or below their values,
 * there; else those in remarks.
 */
export function zeroFlowOfSheet(
  view: View,
  isTaken: IsTaken,
  stopped: Stopped,
  runs: readonly FoundRun[],
  mirrored: Mirrored | undefined,
): ZeroEntry[] {
  // "Zero before 2 Pa" over a column of a list with one row a test states no value.
  const headings = new Set(
    runs.flatMap(({ row, block }) =>
      row === undefined ? [] : block.segment.columns.map(({ headingCell }) => headingCell),
    ),
  )
  const ways = [
    () => (mirrored ? seenFrom(view, mirrored, isTaken, stopped) : []),
    () => findZeroFlow(view, isTaken, stopped, runs),
    () => zeroFlowInRemarks(view, headings),
    () => (mirrored ? [] : behind(view, isTaken, stopped)),
  ]
  for (const way of ways) {
    const found = way()
    if (found.length > 0) return found
  }
  return []
}

const seenFrom = (
  view: View,
  { view: other, own }: Mirrored,
  isTaken: IsTaken,
  stopped: Stopped,
): ZeroEntry[] =>
  findZeroFlow(other, takenFrom(own, isTaken), stopped, []).map((entry) => ({
    ...entry,
    view,
    ...own(entry.row, entry.column),
  }))

/** "−1.7 | Pa zero flow before" in a sheet that has its other labels in front: taken only where before and after both stand so. */
function behind(view: View, isTaken: IsTaken, stopped: Stopped): ZeroEntry[] {
  const entries = seenFrom(view, fromTheRight(view), isTaken, stopped)
  const isMeant = entries.every(
    ({ figures, row, column }) => figures.length === 1 && view.number(row, column - 1) === figures[0]?.value,
  )
  return isMeant && (['before', 'after'] as const).every((one) => entries.some(({ which }) => which === one))
    ? entries
    : []
}
