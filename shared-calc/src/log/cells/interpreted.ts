import type { Remark } from '../../catalogue/findings/remark.js'
import { quoted } from '../../catalogue/words.js'
import type { Cell } from '../grid/grid.js'
import type { LogProblemCode } from '../problem.js'
import type { DateOrder } from './dates.js'
import type { KnownUnit } from './units.js'

/** What the layout says about a field beyond its place. */
export interface Reading {
  unit?: KnownUnit
  decimal?: '.' | ','
  dateOrder?: DateOrder
  /** The log's own words for the values of a choice. */
  words?: Readonly<Record<string, string>>
  date1904?: boolean
}

export type Interpreted =
  | {
      value: number | string
      remarks: Remark[]
      /** The cell or its number format named the unit: nothing was assumed. */
      ownUnit?: boolean
    }
  | Refused

export interface Refused {
  refused: LogProblemCode
  message: string
  /** The message without its advice on the layout. */
  fault?: string
}

/** What is wrong, and what settles it where a layout reads the value. */
export const refusedUnless = (refused: LogProblemCode, fault: string, advice: string): Refused => ({
  refused,
  message: `${fault}: ${advice}`,
  fault,
})

export function notNumber(cell: Cell): Refused {
  return { refused: 'not-a-number', message: `${quoted(String(cell.value))} is not a number` }
}
