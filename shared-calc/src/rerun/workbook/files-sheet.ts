import type { Workbook } from 'exceljs'
import { shortNames } from '../../catalogue/short-names.js'
import { dayInWords, outcomeWords } from '../../catalogue/words.js'
import type { Outcome } from '../../contract/record/index.js'
import { columnLetters } from '../../reports/workbook/address.js'
import { linkTo } from '../../reports/workbook/file-link.js'
import { setUpPage } from '../../reports/workbook/page.js'
import { dress, fills, fonts, underline, wrap } from '../../reports/workbook/styles.js'
import { wrappedLines } from '../../reports/workbook/wrapped-lines.js'
import type { RerunTest, SignatureState } from '../report.js'
import type { RerunReport } from '../report-of-all.js'
import { colourOutcomes } from './outcome-colours.js'

export const FILES_SHEET = 'Files'
export const FILES_HEAD = 3
/** Lines of the tallest row; the cell holds the whole text. */
const MOST_LINES = 8

/** As people read it; what the file says, where that is no outcome. */
const outcomeText = (outcome = ''): string => outcomeWords[outcome as Outcome] ?? outcome

interface Column {
  readonly head: string
  readonly width: number
  readonly count?: true
  readonly text: (test: RerunTest) => string | number
}

const columns: readonly Column[] = [
  { head: 'Outcome', width: 17, text: ({ outcome }) => outcome },
  { head: 'Site', width: 14, text: ({ site }) => site ?? '' },
  { head: 'Plot', width: 15, text: ({ building }) => building ?? '' },
  { head: 'Date', width: 15, text: ({ date }) => (date === undefined ? '' : dayInWords(date)) },
  { head: 'Test number', width: 12, text: ({ testNumber }) => testNumber ?? '' },
  { head: 'Verdict\nrecorded', width: 9, text: ({ verdict }) => outcomeText(verdict?.recorded) },
  { head: 'Verdict\nnow', width: 9, text: ({ verdict }) => outcomeText(verdict?.recomputed) },
  { head: 'Version', width: 8, text: ({ calculationVersion }) => calculationVersion ?? '' },
  { head: 'Signature', width: 11, text: ({ signature }) => signatureText(signature) },
  { head: 'Figures\ncompared', width: 9, count: true, text: ({ compared }) => compared.figures },
  { head: 'Cells\ncompared', width: 9, count: true, text: ({ compared }) => compared.cells },
  {
    head: 'Differ',
    width: 6,
    count: true,
    text: ({ differences }) => differences.filter(({ rounding }) => !rounding).length,
  },
  {
    head: 'Rounding',
    width: 9,
    count: true,
    text: ({ differences }) => differences.filter(({ rounding }) => rounding).length,
  },
  { head: 'Why', width: 44, text: ({ why, remarks = [], notes }) => [why, ...remarks, ...notes].join('; ') },
  { head: 'File', width: 20, text: ({ part }) => (part === undefined ? '' : ` (${part})`) },
]

/** Place of a column by its heading, counted from 1. */
export const columnOf = (wanted: string): number => columns.findIndex(({ head }) => head === wanted) + 1

/** Counts to the right, words to the left; words that follow a count keep away from it. */
const alignmentOf = (count: true | undefined, column: number) =>
  count
    ? ({ horizontal: 'right' } as const)
    : ({ horizontal: 'left', ...(columns[column - 1]?.count && { indent: 1 }) } as const)

function signatureText(signature: SignatureState | undefined): string {
  if (!signature) return ''
  return 'keyId' in signature ? `${signature.state} (${signature.keyId})` : signature.state
}

/** One row per test. Returns the row of each. */
export function writeFilesSheet(workbook: Workbook, { tests }: RerunReport): ReadonlyMap<RerunTest, number> {
  const sheet = workbook.addWorksheet(FILES_SHEET, {
    views: [{ state: 'frozen', ySplit: FILES_HEAD, xSplit: 1, showGridLines: false }],
  })
  sheet.columns = columns.map(({ width }) => ({ width }))
  dress(sheet.getCell('A1'), { font: fonts.title }).value = 'Files re-run'
  sheet.getRow(1).height = 26
  sheet.getRow(FILES_HEAD).height = 28
  columns.forEach(({ head, count }, i) => {
    dress(sheet.getCell(FILES_HEAD, i + 1), {
      font: fonts.bold,
      fill: fills.heading,
      alignment: { wrapText: true, vertical: 'bottom', ...alignmentOf(count, i) },
    }).value = head
  })
  const rows = new Map<RerunTest, number>()
  const names = shortNames(tests.map(({ file }) => file))
  tests.forEach((test, index) => {
    const row = FILES_HEAD + 1 + index
    rows.set(test, row)
    let lines = 1
    columns.forEach(({ head, width, count, text }, i) => {
      const content = head === 'File' ? `${names.get(test.file) ?? test.file}${text(test)}` : text(test)
      const cell = dress(sheet.getCell(row, i + 1), { alignment: { ...wrap, ...alignmentOf(count, i) } })
      if (head === 'File') linkTo(cell, String(content), test.file)
      else cell.value = content
      lines = Math.max(lines, wrappedLines(String(content), width * 1.1))
    })
    sheet.getRow(row).height = 13.5 * Math.min(MOST_LINES, lines)
    underline(sheet, row, columns.length)
  })
  const last = FILES_HEAD + Math.max(tests.length, 1)
  sheet.autoFilter = `A${FILES_HEAD}:${columnLetters(columns.length)}${last}`
  colourOutcomes(sheet, `A${FILES_HEAD + 1}:A${last}`)
  setUpPage(sheet, {
    landscape: true,
    title: 'Re-run of archived workbooks',
    lastRow: last,
    lastColumn: columns.length,
    repeat: `${FILES_HEAD}:${FILES_HEAD}`,
  })
  return rows
}
