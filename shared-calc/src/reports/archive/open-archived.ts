import { guardSizes } from '../../log/container/guard.js'
import { unpackBytes } from '../../log/container/unpack.js'
import { listEntries } from '../../log/container/zip.js'
import type { Grid } from '../../log/grid/grid.js'
import { chooseLayout } from '../../log/layout/fingerprint.js'
import { savedLayout } from '../../log/layout/saved-with.js'
import type { Layout } from '../../log/layout/schema.js'
import { openLog } from '../../log/open-log.js'
import { refuse } from '../../log/problem.js'
import { parseRecordRows, type ReadSummary } from '../workbook/read-summary.js'
import { recordRows } from '../workbook/record-sheet.js'
import type { Parts } from '../workbook/zip/parts.js'

/** An archived file as cells; with record and evaluation where it is a Draughtbook summary. */
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

/** What all parts of an archived summary may unpack to, pictures included. A summary takes half a megabyte. */
const MOST_BYTES = 64 * 1024 * 1024

/** Every part of an archived workbook, unpacked within limits. Throws LogError. */
export function archivedParts(bytes: Uint8Array): Parts {
  const entries = listEntries(bytes)
  guardSizes(bytes.length, entries)
  const parts: Parts = new Map()
  let total = 0
  for (const [name, entry] of entries) {
    if (name.endsWith('/')) continue
    total += entry.size
    if (total > MOST_BYTES)
      refuse('too-large', `the file unpacks to more than ${MOST_BYTES / 1024 / 1024} MB: no summary does`)
    parts.set(name, unpackBytes(bytes, entry))
  }
  return parts
}

/** Said of a workbook that is neither a summary nor described by a layout. */
export const NOT_A_SUMMARY =
  'this is not a Draughtbook summary, and no layout fits it: evaluate the log first, then give its summary'

/** The layout by which an archived log is read: one kept with it, else one whose fingerprint fits. */
export const layoutOf = (grid: Grid, layouts: readonly Layout[]): Layout | undefined =>
  savedLayout(grid) ?? chooseLayout(grid, layouts)
