import type { Direction } from '../../../contract/record/index.js'
import type { View } from '../grid/view.js'
import type { FoundRun } from '../tables/runs.js'

/** A raw series that may give runs. */
export interface FoundSeries {
  readonly view: View
  readonly top: number
  readonly hidden: boolean
}

/** The runs of one test, before its record is made. */
export interface TestGroup {
  /** The log's own name of it; empty where it gives none. */
  key: string
  runs: FoundRun[]
  series: FoundSeries[]
  hidden: boolean
  /** What stands above its readings and says that they do not count. */
  refusedBy?: { readonly title: string; readonly cell: string }
}

/** All pressures below zero are depressurisation, whatever words are missing. */
export const directionOf = ({ direction, readings }: FoundRun): Direction | undefined =>
  direction ??
  (readings.length > 0 && readings.every(({ pressure }) => pressure.value < 0)
    ? 'depressurisation'
    : undefined)
