import type { Direction } from '../../../contract/record/index.js'
import type { KnownUnit } from '../../cells/units.js'
import type { View } from '../grid/view.js'
import type { FoundRun } from '../tables/runs.js'
import type { Figure } from '../tables/table-row.js'

/** Zero-flow values found by their labels outside the tables of readings. */
export interface ZeroEntry {
  readonly view: View
  readonly row: number
  readonly column: number
  readonly which?: 'before' | 'after'
  readonly direction?: Direction
  readonly figures: readonly Figure[]
  readonly unit?: KnownUnit
  readonly label: string
  readonly labelCell: string
  /** Two values without a word: taken as before and after, as they stand. */
  readonly inOrder?: true
  /** Its label says that it was taken after one run and before the other. */
  readonly between?: true
  /** One of two values in a row, given to the runs in their order. */
  readonly byOrder?: true
  /** The run it was given to. */
  readonly run?: FoundRun
  /** The test whose row of a list it stands in. */
  readonly test?: string
  /** Runs of the house whose row of a list it stands in. */
  readonly ofHouse?: readonly FoundRun[]
}

/** With the fan off no house is at more than this, Pa. */
export const LIKELY_MOST = 15
