import type { FoundRun } from '../tables/runs.js'
import type { ZeroEntry } from './entry.js'

/** Where zero flow stands, seen from the table of its run, upright or turned as the run is. */
export interface Place {
  readonly sheet: boolean
  readonly fromTop: number
  readonly fromBottom: number
  readonly fromLeft: number
}

export function placeOf(run: FoundRun, entry: Pick<ZeroEntry, 'view' | 'row' | 'column'>): Place {
  const [row, column] = run.view.turned ? [entry.column, entry.row] : [entry.row, entry.column]
  return {
    sheet: entry.view.name === run.view.name,
    fromTop: row - run.top,
    fromBottom: row - run.bottom,
    fromLeft: column - run.left,
  }
}

/** Whether zero flow stands at the same place above or below each of two runs. */
export const isAlike = (one: Place, other: Place): boolean =>
  one.sheet &&
  other.sheet &&
  one.fromLeft === other.fromLeft &&
  (one.fromTop === other.fromTop || one.fromBottom === other.fromBottom)
