import type { Cell, Grid, Sheet } from '../grid/grid.js'
import { refuse } from '../problem.js'

/** The part of a log that belongs to one test. */
export interface Scope {
  readonly grid: Grid
  /** Sheet of locators that name none. */
  readonly sheet: Sheet
  /** First and last row searched on that sheet. */
  readonly top: number
  readonly bottom: number
  /** Added to the rows of cells and ranges given as for the first block. */
  readonly shift: number
  /** Row of headings, for tests in rows or groups. */
  readonly headerRow?: number
  /** Rows of this test, for tests in rows or groups. */
  readonly rows?: readonly number[]
}

/** A cell found, with the unit its heading or neighbour states. */
export interface Found {
  sheet: Sheet
  row: number
  column: number
  heading?: string
  /** The cell was named by its address: what heads it is looked for around it. */
  named?: boolean
}

/** The sheet a locator means. @throws LogError `not-found` */
export function sheetOf(scope: Scope, name: string | undefined, path: string): Sheet {
  if (name === undefined) return scope.sheet
  const sheet = scope.grid.sheet(name)
  if (!sheet) refuse('not-found', `the log has no sheet called ${name}`, { path })
  return sheet
}

/** Rows to search on a sheet: the test's own on its own sheet, all of them elsewhere. */
export function rowsOf(scope: Scope, sheet: Sheet): [number, number] {
  return sheet === scope.sheet ? [scope.top, scope.bottom] : [0, sheet.rows - 1]
}

export function textOf(cell: Cell | undefined): string | undefined {
  return cell?.kind === 'text' ? String(cell.value) : undefined
}
