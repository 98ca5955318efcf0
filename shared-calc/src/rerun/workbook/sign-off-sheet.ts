import type { Worksheet } from 'exceljs'
import { dayInWords } from '../../catalogue/words.js'
import { setUpPage } from '../../reports/workbook/page.js'
import { dress, fonts, headingRow, heightFor, underline, wrap } from '../../reports/workbook/styles.js'
import { bad, outcomes, type RerunOutcome } from '../report.js'
import type { RerunReport } from '../report-of-all.js'
import { FILES_HEAD, FILES_SHEET } from './files-sheet.js'

export const SIGN_OFF_SHEET = 'Sign-off'
/** Row of the first fact; the calculation version follows. */
export const FACTS_ROW = 4
/** What the auditor fills in, beside each. */
export const SIGN_OFF_LINES: readonly string[] = [
  'Auditor',
  'Organisation',
  'Accepted / not accepted, with remarks',
  'Signature and date',
]

const COLUMNS = 4

const meanings: Readonly<Record<RerunOutcome, string>> = {
  'exactly as issued':
    'Every part of the file is as it was issued, and every figure follows from the inputs.',
  'saved again':
    'Another program has saved the file. Every figure, every cell and everything visible agrees.',
  agrees: 'Every figure agrees to the last digits, or as far as the file shows it.',
  'older calculation version':
    'Agrees with the version it was issued under. The current version’s figures are listed under Differences.',
  differs:
    'The inputs are as recorded, but a figure, a formula, a cell or the appearance of the file is not as issued.',
  'inputs changed after issue':
    'A logged value differs from the recorded one, or the record no longer matches its digest.',
  'signature not accepted':
    'The signature is invalid, or a signature was required and none of the given keys signed the file.',
  'cannot be read': 'The file could not be compared; see the column Why.',
}

export const proofNote = [
  'A digest shows that the record or evaluation was changed without a new digest. It cannot show a change that also replaced the digest: a workbook made from changed readings agrees in every part. Compare the readings with the test log, or accept signed workbooks only.',
  'A signature shows that the record and evaluation are unchanged since a holder of the firm’s private key signed them. It does not show that the readings are true, who signed, or when.',
  'A re-run repeats the calculation from the logged data. It cannot show whether the test was carried out as logged; the auditor judges that.',
]

/** Row of the heading of the outcomes; the counts follow. */
const OUTCOMES = 9

/** What an auditor has to look at, large and red where there is anything. */
function writeHeadline(sheet: Worksheet, { tests, counts }: RerunReport): void {
  const rows = bad.map((outcome) => `B${OUTCOMES + 1 + outcomes.indexOf(outcome)}`)
  const found = bad.reduce((sum, outcome) => sum + counts[outcome], 0)
  const text = (count: number) => `${count} of ${tests.length} to check`
  sheet.mergeCells('A2:C2')
  sheet.getRow(2).height = 40
  dress(sheet.getCell('A2'), {
    font: { ...fonts.title, size: 22, color: { argb: 'FF1E6B3A' } },
    alignment: { vertical: 'middle' },
  }).value = {
    formula: `${rows.join('+')}&" of ${tests.length} to check"`,
    result: text(found),
  }
  sheet.addConditionalFormatting({
    ref: 'A2',
    rules: [
      {
        type: 'expression',
        priority: 1,
        formulae: [`${rows.join('+')}>0`],
        style: { font: { color: { argb: 'FFB00020' } } },
      },
    ],
  })
}

/** The page to sign: what was re-run, how it came out, what that means. */
export function writeSignOffSheet(sheet: Worksheet, report: RerunReport): void {
  sheet.columns = [34, 12, 78, 4].map((width) => ({ width }))
  dress(sheet.getCell('A1'), { font: fonts.title }).value = 'Re-run of archived workbooks'
  sheet.getRow(1).height = 26
  writeHeadline(sheet, report)
  const facts: [string, string | number][] = [
    ['Date of the re-run', dayInWords(report.asOf)],
    ['Calculation version', report.calculationVersion],
    ['Tests and reports re-run', report.tests.length],
    ['Cells compared', report.tests.reduce((sum, { compared }) => sum + compared.cells, 0)],
  ]
  facts.forEach(([label, fact], i) => {
    dress(sheet.getCell(FACTS_ROW + i, 1), { font: fonts.muted }).value = label
    dress(sheet.getCell(FACTS_ROW + i, 2), { alignment: { horizontal: 'left' } }).value = fact
  })
  let row = OUTCOMES
  headingRow(sheet, row, 'Outcome', COLUMNS)
  sheet.getCell(row, 2).value = 'Tests'
  sheet.getCell(row, 3).value = 'What it means'
  const last = FILES_HEAD + Math.max(report.tests.length, 1)
  for (const outcome of outcomes) {
    row += 1
    dress(sheet.getCell(row, 1), { font: fonts.bold, alignment: wrap }).value = outcome
    dress(sheet.getCell(row, 2), { alignment: { horizontal: 'left', vertical: 'top' } }).value = {
      formula: `COUNTIF(${FILES_SHEET}!$A$${FILES_HEAD + 1}:$A$${last},A${row})`,
      result: report.counts[outcome],
    }
    dress(sheet.getCell(row, 3), { alignment: wrap }).value = meanings[outcome]
    sheet.getRow(row).height = heightFor(meanings[outcome], 100)
    underline(sheet, row, COLUMNS)
  }
  row += 2
  headingRow(sheet, row, 'What a re-run can and cannot show', COLUMNS)
  for (const text of proofNote) {
    row += 1
    sheet.mergeCells(row, 1, row, 3)
    dress(sheet.getCell(row, 1), { alignment: wrap }).value = text
    sheet.getRow(row).height = heightFor(text, 155)
  }
  row = signature(sheet, row + 2)
  setUpPage(sheet, {
    landscape: false,
    title: 'Re-run of archived workbooks',
    lastRow: row,
    lastColumn: 3,
    onePage: true,
  })
}

function signature(sheet: Worksheet, start: number): number {
  headingRow(sheet, start, 'Sign-off', COLUMNS)
  SIGN_OFF_LINES.forEach((label, i) => {
    const row = start + 1 + i
    sheet.getRow(row).height = 30
    dress(sheet.getCell(row, 1), { font: fonts.muted, alignment: { vertical: 'bottom' } }).value = label
    for (const column of [2, 3])
      sheet.getCell(row, column).border = { bottom: { style: 'thin', color: { argb: 'FF52606D' } } }
  })
  return start + SIGN_OFF_LINES.length
}
