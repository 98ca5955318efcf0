import type { CellMap, Finding, TestRecord } from '@draughtbook/shared-calc'
import {
  type Answers,
  fileText,
  type Grid,
  type Layout,
  openLog,
  readGrid,
  readLog,
  remarkFinding,
  testsOf,
  testWithAnswers,
} from '@draughtbook/shared-calc/log'
import { parseRecordRows, RECORD, RECORD_SHEET_FORMAT } from '@draughtbook/shared-calc/workbook'
import { OpenQuestions } from './open-questions.js'

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
  /** Answers to what a log leaves open, by path. */
  readonly answers?: Answers | undefined
  /** Day the file was last changed, YYYY-MM-DD: taken, with a caution, where the log states none. */
  readonly fileDate?: string | undefined
}

/**
 * Reads one of our own workbooks, a test log by its layout, or one that no layout describes as it is understood.
 * @throws OpenQuestions where a log leaves something open; InputError with every fault, naming sheet and cell
 */
export function readSheet(bytes: Uint8Array, name: string, options: SheetOptions = {}): ReadTest[] {
  const { layout, answers = {} } = options
  const grid = openLog(bytes, name, layout?.decimal ?? decimalOf(answers))
  const rows = layout ? undefined : summaryRows(grid)
  if (rows) {
    return [testWithAnswers(summaryOf(rows), answers)]
  }
  const reading = { ...options, acceptProposal: true }
  // A text file is opened again where the chosen layout states another decimal sign; that is readLog's affair.
  const read = grid.kind === 'workbook' ? readGrid(grid, reading) : readLog(bytes, name, reading)
  if (read.questions.length > 0) throw new OpenQuestions(read.questions, read.problems)
  return testsOf(read)
}

const decimalOf = ({ decimal }: Answers) => (decimal === '.' || decimal === ',' ? decimal : undefined)

function summaryOf(rows: ReadonlyMap<string, readonly string[]>): ReadTest {
  const { record, digests } = parseRecordRows(rows)
  const altered = digests.record.written !== digests.record.found
  return {
    record,
    cells: {},
    findings: altered ? [remarkFinding(fileText('record-altered'), [`${RECORD}!B4`], ['format'])] : [],
  }
}

/** Whether a workbook is one of our own summaries. */
export const isSummary = (grid: Grid): boolean => summaryRows(grid) !== undefined

/** Rows of the Record sheet, key → texts, where a workbook is one of our own summaries; undefined for any other. */
function summaryRows(grid: Grid): Map<string, string[]> | undefined {
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
