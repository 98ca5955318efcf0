import type { Workbook } from 'exceljs'
import type { GivenHome } from '../../assessment/building/home.js'
import type { Cell, Grid, Sheet } from '../../log/grid/grid.js'
import type { NamedTest } from '../named-test.js'

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
  /** The sheet that copies figures from the tests, row by row from the first, and how many of its columns do. */
  readonly copied: { readonly sheet: string; readonly first: number; readonly columns: number }
  /** The tests that a workbook says it is made of. */
  readonly parts: (grid: Grid, bytes: Uint8Array) => readonly PartOf[]
  /** Made again with whatever else was entered for it, as the workbook says. @throws InputError where that cannot be made */
  readonly layOut: (grid: Grid, tests: readonly GivenHome[]) => Workbook
}

/** The content of a cell of a sheet, counted from 1. */
export const contentAt = (sheet: Sheet | undefined, row: number, column: number): Cell['value'] | undefined =>
  sheet?.at(row - 1, column - 1)?.value

export const textAt = (sheet: Sheet | undefined, row: number, column: number): string =>
  String(contentAt(sheet, row, column) ?? '').trim()

/** A number of a cell; undefined where it holds none. */
export function numberAt(sheet: Sheet | undefined, row: number, column: number): number | undefined {
  const content = contentAt(sheet, row, column)
  return typeof content === 'number' ? content : undefined
}
