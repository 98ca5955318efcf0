import type { Grid } from '@draughtbook/shared-calc/log'
import { RECORD, RECORD_SHEET_FORMAT } from '@draughtbook/shared-calc/workbook'

/** Rows of the Record sheet, key → texts, where a workbook is one of our own summaries; undefined for any other. */
export function summaryRows(grid: Grid): Map<string, string[]> | undefined {
  if (!grid.sheetNames.includes(RECORD)) return undefined
  const sheet = grid.sheet(RECORD)
  const rows = new Map<string, string[]>()
  for (let row = 0; row < (sheet?.rows ?? 0); row++) {
    const key = String(sheet?.at(row, 0)?.value ?? '')
    rows.set(key, [...(rows.get(key) ?? []), String(sheet?.at(row, 1)?.value ?? '')])
  }
  const [format = ''] = rows.get('sheet format') ?? []
  return format.split('@')[0] === RECORD_SHEET_FORMAT.split('@')[0] ? rows : undefined
}
