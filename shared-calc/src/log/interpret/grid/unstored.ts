import type { View } from './view.js'

const MOST_COLUMNS = 60

/** The first formula without a result in some rows of a sheet. */
export function unstoredIn(view: View, from: number, to: number): string | undefined {
  for (let row = from; row < to; row++)
    for (let column = 0; column < Math.min(view.columns, MOST_COLUMNS); column++) {
      const content = view.at(row, column)
      if (content?.kind === 'error' && content.unstored) return view.address(row, column)
    }
  return undefined
}

/** Fewer formulas below one another are no column of readings. */
const FEWEST = 3

/** The first cell of a column of formulas without results: readings that cannot be seen. */
export function unstoredColumn(view: View): string | undefined {
  for (let column = 0; column < Math.min(view.columns, MOST_COLUMNS); column++) {
    let count = 0
    for (let row = 0; row < view.rows; row++) {
      const content = view.at(row, column)
      count = content?.kind === 'error' && content.unstored ? count + 1 : 0
      if (count >= FEWEST) return view.address(row - FEWEST + 1, column)
    }
  }
  return undefined
}
