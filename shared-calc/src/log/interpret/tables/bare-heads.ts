import { READ, type View } from '../grid/view.js'
import { readLabel } from '../words/label.js'
import type { Head } from './heads.js'

/** Fewer rows of numbers below one another are no table of readings. */
const FEWEST_ROWS = 4
const MOST_BLOCKS = 60

/** Blocks of numbers below one another that no heading stands over: two columns or more, side by side. */
export function bareHeads(view: View): Head[] {
  const heads: Head[] = []
  for (let row = 0; row < Math.min(view.rows, READ.rows) && heads.length < MOST_BLOCKS; row++)
    for (const columns of groupsBeginning(view, row))
      heads.push({
        view,
        top: row,
        first: row,
        columns: columns.map((at) => ({
          at,
          label: readLabel(''),
          headingCell: view.address(row, at),
        })),
      })
  return heads
}

/** Neighbouring columns whose numbers begin in this row and go on below it. */
function groupsBeginning(view: View, row: number): number[][] {
  const groups: number[][] = []
  for (let column = 0; column < view.columns; column++) {
    let filled = 0
    while (filled < FEWEST_ROWS && view.number(row + filled, column) !== undefined) filled++
    if (filled < FEWEST_ROWS) continue
    const last = groups.at(-1)
    if (last?.at(-1) === column - 1) last.push(column)
    else groups.push([column])
  }
  // A value above one of them belongs to a label; the table begins where a second column does.
  return groups.filter(
    (group) => group.length >= 2 && group.some((column) => view.number(row - 1, column) === undefined),
  )
}
