import { houseOf, type RegisterRow } from './arrange.js'
import { grouped } from './grouped.js'
import { type StageChange, stageChange } from './stage-change.js'
import { isTest } from './test-classes.js'

/** Two tests of one house, one after the other, and what changed between them. */
export interface HouseChange extends StageChange {
  readonly site?: string
  readonly building: string
  readonly earlierRow: number
  readonly laterRow: number
  readonly earlierStage: string
  readonly laterStage: string
}

/** Changes from each test of a house to the next; copies, altered summaries and tests that are not valid left out. */
export function houseChanges(rows: readonly RegisterRow[]): HouseChange[] {
  const usable = rows.filter(({ role, outcome }) => isTest(role) && outcome !== 'not valid')
  return [...grouped(usable, houseOf).values()].flatMap((tests) =>
    tests.slice(1).flatMap((later, i) => {
      const earlier = tests[i]
      if (!earlier) return []
      return [
        {
          ...(later.site !== undefined && { site: later.site }),
          building: later.building,
          earlierRow: earlier.row,
          laterRow: later.row,
          earlierStage: earlier.stage ?? '',
          laterStage: later.stage ?? '',
          ...stageChange(earlier, later),
        },
      ]
    }),
  )
}
