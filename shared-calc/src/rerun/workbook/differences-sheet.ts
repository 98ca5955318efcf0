import type { Workbook, Worksheet } from 'exceljs'
import { shortNames } from '../../catalogue/short-names.js'
import { columnLetters } from '../../reports/workbook/address.js'
import { linkTo } from '../../reports/workbook/file-link.js'
import { setUpPage } from '../../reports/workbook/page.js'
import { dress, fills, fonts, formatFor, underline, wrap } from '../../reports/workbook/styles.js'
import { wrappedLines } from '../../reports/workbook/wrapped-lines.js'
import type { Difference, RerunTest } from '../report.js'
import { type ThreeValues, threeValues } from '../report.js'
import type { RerunReport } from '../report-of-all.js'

export const DIFFERENCES_SHEET = 'Differences'
const HEAD = 4

/** Together as wide as a page shows in a readable size. A head stands as what is below it: numbers to the right. */
const columns: readonly { readonly head: string; readonly width: number; readonly right?: true }[] = [
  { head: 'File', width: 18 },
  { head: 'Plot', width: 14 },
  { head: 'What', width: 9 },
  { head: 'Which', width: 30 },
  { head: 'Cell', width: 15 },
  { head: 'Issued', width: 14, right: true },
  { head: 'In the file', width: 14, right: true },
  { head: 'Recalculated', width: 14, right: true },
  { head: 'Change', width: 10, right: true },
  { head: 'in %', width: 8, right: true },
  { head: 'Unit', width: 11 },
  { head: 'Calculation', width: 15 },
  { head: 'Working of the recalculated value', width: 46 },
]
/** Characters of the body font a unit of a column's width. */
const PER_WIDTH = 1.1

const top = { horizontal: 'right', vertical: 'top' } as const

/** Most rows of one file: a workbook edited throughout must not bury the others. */
const MOST = 60
/** Lines of the tallest row; the cell holds the whole text. */
const MOST_LINES = 5

/** One row per figure or cell that differs by more than rounding, with the working beside its value. */
export function writeDifferencesSheet(
  workbook: Workbook,
  { tests }: RerunReport,
  files: ReadonlyMap<RerunTest, number>,
): void {
  const sheet = workbook.addWorksheet(DIFFERENCES_SHEET, {
    views: [{ state: 'frozen', ySplit: HEAD, showGridLines: false }],
  })
  sheet.columns = columns.map(({ width }) => ({ width }))
  dress(sheet.getCell('A1'), { font: fonts.title }).value = 'Differences'
  sheet.getRow(1).height = 26
  dress(sheet.getCell('A2'), { font: fonts.muted }).value =
    'One row for each figure or cell that differs by more than rounding. Change is from the left-hand value to the next one that differs. Links open the archived file at the cell.'
  columns.forEach(({ head, right }, i) => {
    dress(sheet.getCell(HEAD, i + 1), {
      font: fonts.bold,
      fill: fills.heading,
      alignment: right ? { horizontal: 'right' } : { horizontal: 'left', indent: 1 },
    }).value = head
  })
  let row = HEAD + 1
  const names = shortNames(tests.map(({ file }) => file))
  for (const test of tests) {
    const own = test.calculationVersion === undefined ? 'this version' : `version ${test.calculationVersion}`
    for (const [lines, against] of [
      [real(test.differences), own],
      [real(test.sinceIssue, true), 'current version'],
    ] as const)
      row = writeTest(sheet, row, test, names.get(test.file) ?? test.file, lines, against, files)
  }
  if (row === HEAD + 1) {
    dress(sheet.getCell(row, 1), {}).value = 'Nothing differs by more than rounding.'
    row += 1
  }
  sheet.autoFilter = `A${HEAD}:${columnLetters(columns.length)}${row - 1}`
  setUpPage(sheet, {
    landscape: true,
    title: 'Re-run of archived workbooks',
    lastRow: row - 1,
    lastColumn: columns.length,
    repeat: `${HEAD}:${HEAD}`,
  })
}

/** What differs by more than rounding; under a changed input the figures that follow from it. */
const real = (differences: readonly Difference[], following = false): Line[] =>
  differences
    .filter(({ rounding }) => !rounding)
    .flatMap((difference) => [
      { ...difference, values: threeValues(difference, following), following },
      ...real(difference.follows ?? [], true),
    ])

type Line = Difference & { readonly values: ThreeValues; readonly following: boolean }

function writeTest(
  sheet: Worksheet,
  start: number,
  test: RerunTest,
  name: string,
  differences: readonly Line[],
  against: string,
  files: ReadonlyMap<RerunTest, number>,
): number {
  differences.slice(0, MOST).forEach((difference, i) => {
    writeDifference(sheet, start + i, test, name, difference, against)
  })
  if (differences.length <= MOST) return start + differences.length
  dress(sheet.getCell(start + MOST, 1), {
    font: fonts.muted,
  }).value = `${differences.length - MOST} more in ${name}: see sheet Files, row ${files.get(test) ?? ''}, and the list from --json`
  return start + MOST + 1
}

function writeDifference(
  sheet: Worksheet,
  row: number,
  test: RerunTest,
  name: string,
  { kind, label, cell, unit, working, values, following }: Line,
  against: string,
): void {
  const at = (column: number) =>
    dress(sheet.getCell(row, column), { alignment: { ...wrap, horizontal: 'left', indent: 1 } })
  linkTo(at(1), name, test.file)
  at(2).value = test.building ?? ''
  at(3).value = kind
  at(4).value = following ? `  ${label}` : label
  if (cell !== undefined) linkTo(at(5), cell, test.file, cell)
  const { issued, inFile, workedOut } = values
  const shown = [issued, inFile, workedOut]
  shown.forEach((content, i) => {
    value(sheet, row, 6 + i, content)
  })
  writeChange(sheet, row, shown)
  at(11).value = unit ?? ''
  at(12).value = against
  if (working !== undefined) at(13).value = working
  const lines = Math.max(
    ...[name, test.building, kind, label, cell, ...shown, unit, against, working].map((text, i) => {
      const column = [1, 2, 3, 4, 5, 6, 7, 8, 11, 12, 13][i] ?? 1
      return wrappedLines(String(text ?? ''), (columns[column - 1]?.width ?? 1) * PER_WIDTH - 2)
    }),
  )
  // Texts of hundreds of characters (a record as data) are cut by the row, not by us: the cell holds all.
  sheet.getRow(row).height = 13.5 * Math.min(Math.max(1, lines), MOST_LINES)
  underline(sheet, row, columns.length)
}

/** From the first of two values to the last, as formulas. */
function writeChange(sheet: Worksheet, row: number, shown: readonly ThreeValues['issued'][]): void {
  const numbers = shown.flatMap((one, i) =>
    typeof one === 'number' ? [{ one, letter: 'FGH'[i] ?? '' }] : [],
  )
  const [from] = numbers
  const to = numbers.find(({ one }) => one !== from?.one) ?? numbers.at(-1)
  if (!from || !to || to === from) return
  const change = to.one - from.one
  dress(sheet.getCell(row, 9), { numFmt: formatFor(change), alignment: top }).value = {
    formula: `${to.letter}${row}-${from.letter}${row}`,
    result: change,
  }
  dress(sheet.getCell(row, 10), { numFmt: '0.00 %', alignment: top }).value = {
    formula: `IF(${from.letter}${row}=0,"",I${row}/ABS(${from.letter}${row}))`,
    result: from.one === 0 ? '' : change / Math.abs(from.one),
  }
}

function value(sheet: Worksheet, row: number, column: number, content: ThreeValues['issued']): void {
  if (content === undefined) return
  const cell = dress(sheet.getCell(row, column), {
    alignment: { ...wrap, horizontal: typeof content === 'number' ? 'right' : 'left' },
    ...(typeof content === 'number' && { numFmt: formatFor(content) }),
  })
  cell.value = content ?? '(nothing)'
}
