import type { View } from '../grid/view.js'
import { readLabel, says } from '../words/label.js'

/** Title, zero-flow rows and headings of the table beside may stand so many rows further down. */
const ROWS_LATER = 8
/** So many numbers below a heading make a column of a table. */
const FEWEST = 3
/** A column that parts two tables is blank in so many rows from the headings on. */
const BLANK_ROWS = 6

/**
 * Tells which columns belong to a table of its own beside the one that begins here: a blank column parts them, and their numbers began
 * further up, or begin below headings further down. Of two houses side by side one may have a reading more.
 * @param first - first row of numbers
 * @param under - columns of the table that begins here
 */
export function tableBeside(
  view: View,
  first: number,
  under: readonly number[],
): (column: number) => boolean {
  if (view.turned) return () => false
  const left = nextBlank(view, first, Math.min(...under), -1)
  const right = nextBlank(view, first, Math.max(...under), 1)
  return (column) =>
    (column < left || column > right) &&
    (isGoingOn(view, first, column) || isHeadedLater(view, first, column))
}

/** The nearest blank column on one side; beyond the sheet where there is none. */
function nextBlank(view: View, first: number, from: number, step: 1 | -1): number {
  const isFilled = (column: number) => inRows(first - 1, BLANK_ROWS).some((row) => view.at(row, column))
  let column = from + step
  while (column >= 0 && column < view.columns && isFilled(column)) column += step
  return column
}

const inRows = (from: number, count: number): number[] =>
  Array.from({ length: count }, (_, index) => from + index)

const areNumbers = (view: View, from: number, column: number): boolean =>
  inRows(from, FEWEST).every((row) => view.number(row, column) !== undefined)

const isGoingOn = (view: View, first: number, column: number): boolean => areNumbers(view, first - 2, column)

/** This column, or one right beside it, has a heading of pressures or flows further down with numbers below. */
const isHeadedLater = (view: View, first: number, column: number): boolean =>
  inRows(first, ROWS_LATER).some((row) =>
    [column, column - 1, column + 1].some((at) => isHeadingOfReadings(view, row, at)),
  )

function isHeadingOfReadings(view: View, row: number, column: number): boolean {
  const text = view.text(row, column)
  // A label is read only where numbers stand below it: of a large sheet that is little.
  if (text === undefined || view.number(row, column + 1) !== undefined) return false
  if (!areNumbers(view, row + 1, column)) return false
  const label = readLabel(text)
  const names = (one: 'pressure' | 'flow') => label.unit?.kind === one || says(label, one)
  return !says(label, 'zero') && (names('pressure') || names('flow'))
}
