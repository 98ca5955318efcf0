import type { Workbook } from 'exceljs'
import type { GivenHome } from '../../assessment/building/home.js'
import type { Grid } from '../../log/grid/grid.js'
import type { Parts } from '../../reports/workbook/zip/parts.js'
import type { NamedTest } from '../named-test.js'
import type { Entered, Guess } from './entered.js'

/** A test that a report on several tests is made of. */
export interface PartOf extends NamedTest {
  /** Row of the sheet that copies its figures, counted from 1; absent where the report does not use it. */
  readonly row?: number
  /** The name under which it was given when the report was made, where that is known. */
  readonly given?: string | undefined
}

/** A kind of report that is made of tests and nothing else, and so can be made of them again. */
export interface MadeOfTests {
  readonly words: string
  /** The sheet that copies figures from the tests, row by row from the first, how many of its columns do, and which names the file. */
  readonly copied: {
    readonly sheet: string
    readonly first: number
    readonly columns: number
    readonly file: number
  }
  /** The tests that a workbook says it is made of. */
  readonly parts: (grid: Grid, parts: Parts) => readonly PartOf[]
  /** Made again with whatever else was entered for it, as the workbook says. @throws InputError where that cannot be made */
  readonly layOut: (grid: Grid, tests: readonly GivenHome[], entered: Entered) => Workbook
  /** What may have been entered, where the cells that say so agree with nothing else. */
  readonly guesses?: (grid: Grid) => readonly Guess[]
  /** What was entered for it, with its cells: only the file says that. */
  readonly entered: (grid: Grid) => readonly string[]
}
