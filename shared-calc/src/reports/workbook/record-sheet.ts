import type { Workbook } from 'exceljs'
import { digestOf, type Evaluation, type TestRecord } from '../../contract/record/index.js'
import type { Grid } from '../../log/grid/grid.js'
import { setUpPage } from './page.js'
import type { Pictures } from './pictures/picture.js'
import { describePictures, PICTURES } from './pictures/picture-rows.js'
import { type RecordSignature, signatureRows } from './record-signature.js'
import { dress, fonts, headingRow, heightFor, wrap } from './styles.js'

export const RECORD = 'Record'
export const RECORD_SHEET_FORMAT = 'draughtbook/summary@1'

/** Below the data. On paper only the digests are of use: with them a printed page and its file can be brought together. */
const notes = [
  'Digests: SHA-256 of the canonical JSON (RFC 8785). They show that something was changed, not by whom. This sheet is protected without a password.',
  'Rows "record" and "evaluation" are data for a re-run and are not for printing: a printed page shows only their beginning. Keep the file with the printed pages; the digests above show which file belongs to them.',
]
const NOTE_WIDTH = 120

/** The record and its evaluation as data, with their digests; protected against slips, without a password. */
export async function writeRecordSheet(
  workbook: Workbook,
  record: TestRecord,
  evaluation: Evaluation,
  signature?: RecordSignature,
  pictures?: Pictures,
): Promise<void> {
  const sheet = workbook.addWorksheet(RECORD, { views: [{ showGridLines: false }] })
  sheet.columns = [{ width: 26 }, { width: 100 }]
  headingRow(sheet, 1, 'Record and evaluation as data', 2)
  const rows: [string, string][] = [
    ['sheet format', RECORD_SHEET_FORMAT],
    ['calculation version', evaluation.calculationVersion],
    ['record digest', evaluation.recordDigest],
    ['evaluation digest', digestOf(evaluation)],
    ...(signature ? signatureRows(signature) : []),
    ...(pictures ? jsonChunks(describePictures(pictures)) : []).map((chunk): [string, string] => [
      PICTURES,
      chunk,
    ]),
    ...jsonChunks(record).map((chunk): [string, string] => ['record', chunk]),
    ...jsonChunks(evaluation).map((chunk): [string, string] => ['evaluation', chunk]),
  ]
  rows.forEach(([key, text], i) => {
    dress(sheet.getRow(i + 2).getCell(1), { font: fonts.bold, alignment: { vertical: 'top' } }).value = key
    dress(sheet.getRow(i + 2).getCell(2), { font: fonts.small }).value = text
  })
  notes.forEach((note, i) => {
    const row = rows.length + 3 + i
    sheet.mergeCells(row, 1, row, 2)
    dress(sheet.getRow(row).getCell(1), { font: fonts.muted, alignment: wrap }).value = note
    sheet.getRow(row).height = heightFor(note, NOTE_WIDTH)
  })
  setUpPage(sheet, {
    landscape: false,
    title: RECORD,
    lastRow: rows.length + 2 + notes.length,
    lastColumn: 2,
  })
  // A high spin count costs 190 ms and protects nothing here: there is no password.
  await sheet.protect('', { spinCount: 1000, selectLockedCells: true, selectUnlockedCells: true })
}

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

/** Characters of one cell, well under the 32 767 a cell can hold. */
const CHUNK = 30_000

/**
 * A value as sheet Record holds it: JSON in plain ASCII. Everything a spreadsheet might alter on the way is escaped: characters
 * outside ASCII, and `_x`, which begins an escape of its own in workbook files.
 */
export const sheetText = (value: unknown): string =>
  JSON.stringify(value)
    .replace(/[\u007f-\uffff]/g, (mark) => `\\u${mark.charCodeAt(0).toString(16).padStart(4, '0')}`)
    .replaceAll('_x', '\\u005fx')

/** The same cut into pieces that a cell can hold. */
function jsonChunks(value: unknown): string[] {
  const text = sheetText(value)
  const chunks: string[] = []
  for (let at = 0; at < text.length; at += CHUNK) chunks.push(text.slice(at, at + CHUNK))
  return chunks
}

/** The value that {@link jsonChunks} was given. Throws SyntaxError when the pieces are not JSON. */
export const parseChunks = (chunks: readonly string[]): unknown => JSON.parse(chunks.join(''))
