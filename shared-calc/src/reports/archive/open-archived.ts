import type { Grid } from '../../log/grid/grid.js'
import { openLog } from '../../log/open-log.js'
import { parseRecordRows, type ReadSummary } from '../workbook/read-summary.js'
import { recordRows } from '../workbook/record-rows.js'

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
