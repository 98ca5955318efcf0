import type { View } from '../grid/view.js'
import { readLabel, says } from '../words/label.js'

/** Title, zero-flow rows and headings of the table beside may stand so many rows further down. */
const ROWS_LATER = 8
/** So many numbers below a heading make a column of a table. */
const FEWEST = 3
/** A column that parts two tables is blank in so many rows from the headings on. */
const BLANK_ROWS = 6

/**
 * Whether a column belongs to a table of its own beside the one that begins here: a blank column parts them, and its numbers began
 * further up, or begin below headings further down. Of two houses side by side one may have a reading more.
 * @param first - first row of numbers
 * @param under - columns of the table that begins here
 */
export function isOfTableBeside(
  view: View,
  first: number,
  under: readonly number[],
  column: number,
): boolean {
  if (view.turned || !isParted(view, first, under, column)) return false
  const isGoingOn = [first - 2, first - 1, first].every((row) => view.number(row, column) !== undefined)
  return isGoingOn || isHeadedLater(view, first, column)
}

function isParted(view: View, first: number, under: readonly number[], column: number): boolean {
  const [left, right] = [Math.min(...under), Math.max(...under)]
  const [from, to] = column < left ? [column, left] : [right, column]
  for (let between = from + 1; between < to; between++)
    if (
      Array.from({ length: BLANK_ROWS }, (_, index) => first - 1 + index).every(
        (row) => !view.at(row, between),
      )
    )
      return true
  return false
}

/** This column, or one right beside it, has a heading of pressures or flows further down with numbers below. */
function isHeadedLater(view: View, first: number, column: number): boolean {
  for (let row = first; row < Math.min(view.rows, first + ROWS_LATER); row++)
    for (const at of [column, column - 1, column + 1]) {
      const text = view.text(row, at)
      if (text === undefined || view.number(row, at + 1) !== undefined) continue
      const label = readLabel(text)
      const kind = label.unit?.kind
      const isHeading = ['pressure', 'flow'].some(
        (one) => kind === one || says(label, one as 'pressure' | 'flow'),
      )
      if (says(label, 'zero') || !isHeading) continue
      const below = Array.from({ length: FEWEST }, (_, index) => view.number(row + 1 + index, at))
      if (below.every((value) => value !== undefined)) return true
    }
  return false
}
