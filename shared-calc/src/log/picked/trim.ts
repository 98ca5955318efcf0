import { tableText } from '../../catalogue/findings/log/tables.js'
import type { Collector } from '../collector.js'
import { addressOf, type Block, withSheet } from '../grid/address.js'
import type { Cell, Grid, Sheet } from '../grid/grid.js'
import { refuse } from '../problem.js'
import type { PickedCells } from './picks.js'

/** The picked cells as a list: without what is beyond the sheet, without headings on top, without blanks at the end. */
export function trimmed(
  grid: Grid,
  { sheet: name, block }: PickedCells,
  path: string,
  collector: Collector,
): Block {
  const sheet = grid.sheet(name)
  if (!sheet) refuse('not-found', `the workbook has no sheet called ${name}`, { path })
  const bottom = Math.min(block.bottom, sheet.rows - 1)
  const right = Math.min(block.right, sheet.columns - 1)
  const upright = right <= block.left || bottom > block.top
  if (bottom < block.top || right < block.left) return { ...block, bottom: block.top, right: block.left }
  if (bottom > block.top && right > block.left) return { ...block, bottom, right }
  const line = (at: number) =>
    upright ? { row: block.top + at, column: block.left } : { row: block.top, column: block.left + at }
  const length = upright ? bottom - block.top + 1 : right - block.left + 1
  const cells = Array.from({ length }, (_, at) => sheet.at(line(at).row, line(at).column))
  const first = headings(cells)
  for (let at = 0; at < first; at++) tellHeading(sheet, line(at), cells[at], path, collector)
  const last = Math.max(first, cells.findLastIndex(Boolean))
  return upright
    ? { ...block, top: block.top + first, bottom: block.top + last, right: block.left }
    : { ...block, left: block.left + first, right: block.left + last, bottom: block.top }
}

/** Texts without a figure, and blanks, before the first cell that holds a number; none where no number follows. */
function headings(cells: readonly (Cell | undefined)[]): number {
  const first = cells.findIndex(
    (cell) => cell && (cell.kind !== 'text' || /\d/.test(String(cell.value).replace(/m3|m³|H2O/gi, ''))),
  )
  return Math.max(0, first)
}

function tellHeading(
  sheet: Sheet,
  { row, column }: { row: number; column: number },
  cell: Cell | undefined,
  path: string,
  collector: Collector,
): void {
  if (cell)
    collector.tell(
      tableText('log-heading', { heading: String(cell.value) }),
      withSheet(sheet.name, addressOf(row, column)),
      path,
    )
}
