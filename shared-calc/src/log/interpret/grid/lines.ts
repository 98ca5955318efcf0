import type { Place } from '../../grid/address.js'
import { eachCell, type Sheet } from '../../grid/grid.js'

/** Lines of a sheet in the order they are read in, by their number in the sheet. */
export interface Lines {
  readonly rows: readonly number[]
  readonly columns: readonly number[]
}

/** Lines that hold something, at the least, for the distance between them to be a habit and no chance. */
const FEWEST = { rows: 3, columns: 3 }
/** Lines from one that holds something to the next, at the most. */
const FARTHEST = 4

/**
 * The lines of a sheet. Where the same number of empty ones stands behind every line that holds something, as in forms with double spacing
 * and with a narrow column between any two, they are left out; what is wider than that stays a gap.
 */
export function linesOf(sheet: Sheet, { rows, columns }: { rows: number; columns: number }): Lines {
  // Only a form is spaced out; a sheet of which a part is read is none, and may be too large to go through once more.
  if (sheet.rows > rows || sheet.columns > columns)
    return { rows: numbered(rows), columns: numbered(columns) }
  const used = { rows: new Set<number>(), columns: new Set<number>() }
  for (const [row, column, { kind, value }] of eachCell(sheet)) {
    if (kind === 'text' && String(value).trim() === '') continue
    used.rows.add(row)
    used.columns.add(column)
  }
  return {
    rows: spaced(rows, used.rows, FEWEST.rows),
    columns: spaced(columns, used.columns, FEWEST.columns),
  }
}

const numbered = (count: number): number[] => Array.from({ length: count }, (_, index) => index)

function spaced(count: number, used: ReadonlySet<number>, fewest: number): number[] {
  const all = numbered(count)
  const held = all.filter((index) => used.has(index))
  const step = Math.min(...held.slice(1).map((index, at) => index - (held[at] as number)))
  if (held.length < fewest || step < 2 || step > FARTHEST) return all
  const left = new Set(held.flatMap((index) => Array.from({ length: step - 1 }, (_, at) => index + 1 + at)))
  return all.filter((index) => !left.has(index))
}

/** Where a line of a view stands in the sheet; past the last one too. */
export const inSheet = (lines: readonly number[], index: number): number =>
  lines[index] ?? index + ((lines.at(-1) ?? -1) + 1 - lines.length)

/** Where a line of the sheet stands in a view: one left out counts as the one before it. */
function inView(lines: readonly number[], index: number): number {
  let [low, high] = [0, lines.length]
  while (low < high) {
    const middle = (low + high) >> 1
    if ((lines[middle] as number) <= index) low = middle + 1
    else high = middle
  }
  return low - 1
}

/** Place in the sheet of a place in a view of these lines. */
export const placeInSheet = ({ rows, columns }: Lines, row: number, column: number): Place => ({
  row: inSheet(rows, row),
  column: inSheet(columns, column),
})

/** Place in a view of these lines of a place in the sheet. */
export const placeInView = ({ rows, columns }: Lines, { row, column }: Place): Place => ({
  row: inView(rows, row),
  column: inView(columns, column),
})
