import { refuse } from '../problem.js'
import type { Cell, Sheet } from './grid.js'

/** Places asked for one by one at most; a sheet that can list its cells is not bound by it. */
const MOST_PLACES = 5_000_000

/** All cells of a sheet, in any order. Throws LogError where a sparse sheet is too wide to look through. */
export function* eachCell(sheet: Sheet): Iterable<[row: number, column: number, cell: Cell]> {
  if (sheet.cells) {
    yield* sheet.cells()
    return
  }
  if (sheet.rows * sheet.columns > MOST_PLACES)
    refuse('sheet-too-wide', `sheet ${sheet.name} is too wide to look through`)
  for (let row = 0; row < sheet.rows; row++)
    for (let column = 0; column < sheet.columns; column++) {
      const cell = sheet.at(row, column)
      if (cell) yield [row, column, cell]
    }
}
