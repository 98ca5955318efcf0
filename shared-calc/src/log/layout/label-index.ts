import { eachCell, type Sheet } from '../grid/grid.js'
import { LIMITS } from '../limits.js'
import { type Heading, readHeading } from './match.js'

/** A cell that may be a label, with its words. */
export interface IndexedLabel {
  row: number
  column: number
  heading: Heading
}

const known = new WeakMap<Sheet, IndexedLabel[]>()

/** Texts of a sheet that may be labels, in reading order: found once, however many labels a layout asks for. */
export function labelIndex(sheet: Sheet): readonly IndexedLabel[] {
  const cached = known.get(sheet)
  if (cached) return cached
  const labels: IndexedLabel[] = []
  for (const [row, column, cell] of eachCell(sheet)) {
    const text = cell.kind === 'text' ? String(cell.value) : ''
    // Clock times and numbers as text are not labels; a series has 100,000 of them.
    if (!text || text.length > LIMITS.labelCharacters || /^[\d\s.,:/+-]*$/.test(text)) continue
    labels.push({ row, column, heading: readHeading(text) })
  }
  labels.sort((a, b) => a.row - b.row || a.column - b.column)
  known.set(sheet, labels)
  return labels
}
