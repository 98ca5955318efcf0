import type { Grid } from '../../log/grid/grid.js'
import { RECORD } from './record-sheet.js'

/**
 * Rows of sheet Record, key → texts of column B; empty where the workbook has no such sheet. The grid comes from the guarded
 * reader: no summary is opened without its limits.
 */
export function recordRows(grid: Grid): Map<string, string[]> {
  const rows = new Map<string, string[]>()
  // Only the exact name: a log's own sheet "RECORD" is not ours.
  const sheet = grid.sheetNames.includes(RECORD) ? grid.sheet(RECORD) : undefined
  for (let row = 0; row < (sheet?.rows ?? 0); row += 1) {
    const key = sheet?.at(row, 0)?.value
    const text = sheet?.at(row, 1)?.value
    if (key === undefined || text === undefined) continue
    const found = rows.get(String(key))
    if (found) found.push(String(text))
    else rows.set(String(key), [String(text)])
  }
  return rows
}
