import type { View } from '../grid/view.js'

/** So many numbers below one another are a column of a table. */
const COLUMN = 5

/** Whether a number stands in a column of numbers: of a table, and no value of a line of zero flow that ends before it. */
export function isInColumn(view: View, row: number, column: number): boolean {
  let count = 1
  for (let up = row - 1; count < COLUMN && view.number(up, column) !== undefined; up--) count++
  for (let down = row + 1; count < COLUMN && view.number(down, column) !== undefined; down++) count++
  return count >= COLUMN
}

/** Whether a blank parts it from the first number behind a word of its line. */
export function isBehindBlank(view: View, row: number, word: number, column: number): boolean {
  let isValue = false
  for (let at = word + 1; at < column; at++) {
    if (view.number(row, at) !== undefined) isValue = true
    else if (isValue && !view.at(row, at)) return true
  }
  return false
}
