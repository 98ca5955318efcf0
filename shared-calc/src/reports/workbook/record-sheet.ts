import type { Workbook } from 'exceljs'
import { digestOf, type Evaluation, type TestRecord } from '../../contract/record/index.js'
import { setUpPage } from './page.js'
import type { Pictures } from './pictures/picture.js'
import { describePictures, PICTURES } from './pictures/picture-rows.js'
import { type RecordSignature, signatureRows } from './record-signature.js'
import { jsonChunks } from './record-text.js'
import { dress, fonts, headingRow } from './styles.js'

export const RECORD = 'Record'
export const RECORD_SHEET_FORMAT = 'draughtbook/summary@1'

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
    dress(sheet.getCell(i + 2, 1), { font: fonts.bold, alignment: { vertical: 'top' } }).value = key
    dress(sheet.getCell(i + 2, 2), { font: fonts.small }).value = text
  })
  dress(sheet.getCell(rows.length + 3, 1), { font: fonts.muted }).value =
    'Digests: SHA-256 of the canonical JSON (RFC 8785). They show that something was changed, not by whom. This sheet is protected without a password.'
  setUpPage(sheet, { landscape: false, title: RECORD, lastRow: rows.length + 3, lastColumn: 2 })
  // A high spin count costs 190 ms and protects nothing here: there is no password.
  await sheet.protect('', { spinCount: 1000, selectLockedCells: true, selectUnlockedCells: true })
}
