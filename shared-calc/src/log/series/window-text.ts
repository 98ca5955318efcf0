import { blockText, withSheet } from '../grid/address.js'
import type { SeriesCells } from './columns.js'

/** The cells a window of samples stands in: Log!B120:B320. */
export function windowText(
  cells: SeriesCells,
  { first, last }: { first: number; last: number },
  column = cells.column,
): string {
  return withSheet(
    cells.sheet,
    blockText({ top: cells.rows[first] ?? 0, bottom: cells.rows[last] ?? 0, left: column, right: column }),
  )
}
