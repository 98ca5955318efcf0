import { columnLetters } from '../../workbook/address.js'
import { columns, FIRST_ROW, REGISTER_SHEET } from './columns.js'

const letters = new Map(columns.map(({ key }, i) => [key, columnLetters(i + 1)]))

export function letterOf(key: string): string {
  const letter = letters.get(key)
  if (!letter) throw new RangeError(`the register has no column ${key}`)
  return letter
}

/** `$G12` for the column in a row of the register's own sheet. */
export const cellOf = (key: string, row: number): string => `$${letterOf(key)}${row}`

/**
 * The whole column of tests, as seen from another sheet.
 * @param tests - number of rows; at least one is spanned
 * @param letter - of the column; as this version writes it unless said
 */
export const columnRange = (key: string, tests: number, letter = letterOf(key)): string => {
  return `${REGISTER_SHEET}!$${letter}$${FIRST_ROW}:$${letter}$${lastRow(tests)}`
}

export const lastRow = (tests: number): number => FIRST_ROW + Math.max(tests, 1) - 1

/**
 * The value of a column in the row with a number, wherever sorting has put that row.
 * @param number - cell with the number, as seen from the same sheet as the formula
 */
export const byNumber = (key: string, number: string, tests: number): string =>
  `INDEX(${columnRange(key, tests)},MATCH(${number},${columnRange('row', tests)},0))`
