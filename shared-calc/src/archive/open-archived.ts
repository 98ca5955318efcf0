import type { Grid } from '../log/grid/grid.js'
import { openLog } from '../log/open-log.js'
import { parseRecordRows, type ReadSummary } from '../workbook/read-summary.js'
import { RECORD } from '../workbook/record-sheet.js'

/** An archived file as cells; with record and evaluation where it is a summary workbook of ours. */
export interface Archived {
  readonly grid: Grid
  readonly summary?: ReadSummary
}

/**
 * Opens an archived workbook with the log's guarded reader: only sheet Record is unpacked.
 * @throws LogError when the file cannot be opened, InputError when its Record sheet is damaged
 */
export function openArchived(bytes: Uint8Array, fileName: string): Archived {
  const grid = openLog(bytes, fileName)
  const rows = recordRows(grid)
  return rows.has('sheet format') ? { grid, summary: parseRecordRows(rows) } : { grid }
}

/** Rows of sheet Record, key → texts of column B; empty where the workbook has no such sheet. */
function recordRows(grid: Grid): Map<string, string[]> {
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
