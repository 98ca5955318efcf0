import type { CellMap, Finding, TestRecord } from '@draughtbook/shared-calc'
import { type Layout, openLog, readGrid, readLog, testsOf } from '@draughtbook/shared-calc/log'
import { parseRecordRows, RECORD } from '@draughtbook/shared-calc/workbook'
import { summaryRows } from './summary-rows.js'

/** One test as read: its record, where its fields stood, and what reading it had to convert or leave out. */
export interface ReadTest {
  readonly record: TestRecord
  readonly cells: CellMap
  readonly findings: readonly Finding[]
}

export interface SheetOptions {
  /** The layout to use, whatever the log looks like. */
  readonly layout?: Layout | undefined
  /** Layouts to choose from. */
  readonly layouts?: readonly Layout[] | undefined
  /** Whether a layout found by guessing may be used. */
  readonly acceptProposal?: boolean | undefined
}

/**
 * Reads one of our own workbooks, or a test log by its layout.
 * @throws InputError with every fault, naming sheet and cell
 */
export function readSheet(bytes: Uint8Array, name: string, options: SheetOptions = {}): ReadTest[] {
  const { layout, layouts = [], acceptProposal = false } = options
  const reading = { ...(layout && { layout }), layouts, acceptProposal }
  const grid = openLog(bytes, name, layout?.decimal)
  const rows = layout ? undefined : summaryRows(grid)
  if (rows) return [summaryOf(rows)]
  // A text file is opened again where the chosen layout states another decimal sign; that is readLog's affair.
  return testsOf(grid.kind === 'workbook' ? readGrid(grid, reading) : readLog(bytes, name, reading))
}

function summaryOf(rows: ReadonlyMap<string, readonly string[]>): ReadTest {
  const { record, digests } = parseRecordRows(rows)
  const altered = digests.record.written !== digests.record.found
  return { record, cells: {}, findings: altered ? [ALTERED] : [] }
}

const ALTERED: Finding = {
  rule: 'record-altered',
  severity: 'caution',
  message:
    'the record on sheet Record was changed after the workbook was written (its digest does not match)',
  where: ['format'],
  cells: [`${RECORD}!B4`],
  remedy: 'find out what was changed, or use the workbook as issued',
}
