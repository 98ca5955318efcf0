import { takenFrom } from '../fields/labels-behind.js'
import type { Mirrored } from '../grid/mirrored.js'
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
  return found.length > 0 ? found : zeroFlowInRemarks(view)
}
