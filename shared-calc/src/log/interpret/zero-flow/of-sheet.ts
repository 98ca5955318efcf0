import { takenFrom } from '../fields/labels-behind.js'
import { fromTheRight, type Mirrored } from '../grid/mirrored.js'
import type { View } from '../grid/view.js'
import type { Stopped } from '../not-searched.js'
import type { FoundRun } from '../tables/runs.js'
import type { ZeroEntry } from './entry.js'
import { findZeroFlow } from './find-labelled.js'
import { zeroFlowInRemarks } from './in-remarks.js'

/** The labelled zero-flow values of a sheet: beside and below their labels, or, where its labels stand so, in front of and above them; else in remarks. */
export function zeroFlowOfSheet(
  view: View,
  isTaken: (row: number, column: number) => boolean,
  stopped: Stopped,
  runs: readonly FoundRun[],
  mirrored: Mirrored | undefined,
): ZeroEntry[] {
  const found = mirrored
    ? findZeroFlow(mirrored.view, takenFrom(mirrored.own, isTaken), stopped, []).map((entry) => ({
        ...entry,
        view,
        ...mirrored.own(entry.row, entry.column),
      }))
    : findZeroFlow(view, isTaken, stopped, runs)
  if (found.length > 0) return found
  const remarks = zeroFlowInRemarks(view)
  return remarks.length > 0 || mirrored ? remarks : behind(view, isTaken, stopped)
}

/** "−1.7 | Pa zero flow before" in a sheet that has its other labels in front: taken only where before and after both stand so. */
function behind(
  view: View,
  isTaken: (row: number, column: number) => boolean,
  stopped: Stopped,
): ZeroEntry[] {
  const mirrored = fromTheRight(view)
  const entries = findZeroFlow(mirrored.view, takenFrom(mirrored.own, isTaken), stopped, []).map((entry) => ({
    ...entry,
    view,
    ...mirrored.own(entry.row, entry.column),
  }))
  const isMeant = entries.every(
    ({ figures, row, column }) => figures.length === 1 && view.number(row, column - 1) === figures[0]?.value,
  )
  return isMeant && (['before', 'after'] as const).every((one) => entries.some(({ which }) => which === one))
    ? entries
    : []
}
