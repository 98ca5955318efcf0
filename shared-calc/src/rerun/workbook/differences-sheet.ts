import type { Workbook, Worksheet } from 'exceljs'
import { columnLetters } from '../../reports/workbook/address.js'
import { linkTo } from '../../reports/workbook/file-link.js'
import { setUpPage } from '../../reports/workbook/page.js'
import { dress, fills, fonts, formatFor, underline, wrap } from '../../reports/workbook/styles.js'
import type { Difference, RerunTest } from '../report.js'
import type { RerunReport } from '../rerun-report.js'

export const DIFFERENCES_SHEET = 'Differences'
const HEAD = 4

const columns = [
  { head: 'File', width: 34 },
  { head: 'Plot', width: 16 },
  { head: 'What', width: 12 },
  { head: 'Which', width: 34 },
  { head: 'Cell', width: 16 },
  { head: 'Recorded', width: 18 },
  { head: 'Expected', width: 18 },
  { head: 'Difference', width: 13 },
  { head: 'in %', width: 9 },
  { head: 'Unit', width: 11 },
  { head: 'Compared with', width: 20 },
  { head: 'Working of the expected value', width: 70 },
]

const top = { horizontal: 'right', vertical: 'top' } as const

/** Most rows of one file: a workbook edited throughout must not bury the others. */
const MOST = 200

/** One row per figure or cell that differs by more than rounding, with the working beside the recorded value. */
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
    'One row for each figure or cell that differs by more than rounding. Difference is recorded minus expected. Links open the archived file at the cell.'
  columns.forEach(({ head }, i) => {
    dress(sheet.getCell(HEAD, i + 1), { font: fonts.bold, fill: fills.heading }).value = head
  })
  let row = HEAD + 1
  for (const test of tests) {
    row = writeTest(
      sheet,
      row,
      test,
      real(test.differences),
      `version ${test.calculationVersion ?? ''}`,
      files,
    )
    row = writeTest(sheet, row, test, real(test.sinceIssue), 'current version', files)
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
const real = (differences: readonly Difference[]): Difference[] =>
  differences
    .filter(({ rounding }) => !rounding)
    .flatMap((difference) => [difference, ...real(difference.follows ?? [])])

function writeTest(
  sheet: Worksheet,
  start: number,
  test: RerunTest,
  differences: readonly Difference[],
  against: string,
  files: ReadonlyMap<RerunTest, number>,
): number {
  differences.slice(0, MOST).forEach((difference, i) => {
    writeDifference(sheet, start + i, test, difference, against)
  })
  if (differences.length <= MOST) return start + differences.length
  dress(sheet.getCell(start + MOST, 1), {
    font: fonts.muted,
  }).value = `${differences.length - MOST} more in ${test.file}: see sheet Files, row ${files.get(test) ?? ''}, and the list from --json`
  return start + MOST + 1
}

function writeDifference(
  sheet: Worksheet,
  row: number,
  test: RerunTest,
  { kind, label, cell, recorded, expected, unit, working }: Difference,
  against: string,
): void {
  const at = (column: number) =>
    dress(sheet.getCell(row, column), { alignment: { ...wrap, horizontal: 'left', indent: 1 } })
  linkTo(at(1), test.file, test.file)
  at(2).value = test.building ?? ''
  at(3).value = kind
  at(4).value = label
  if (cell !== undefined) linkTo(at(5), cell, test.file, cell)
  value(sheet, row, 6, recorded)
  value(sheet, row, 7, expected)
  if (typeof recorded === 'number' && typeof expected === 'number') {
    dress(sheet.getCell(row, 8), { numFmt: formatFor(recorded - expected), alignment: top }).value = {
      formula: `F${row}-G${row}`,
      result: recorded - expected,
    }
    dress(sheet.getCell(row, 9), { numFmt: '0.00 %', alignment: top }).value = {
      formula: `IF(G${row}=0,"",H${row}/ABS(G${row}))`,
      result: expected === 0 ? '' : (recorded - expected) / Math.abs(expected),
    }
  }
  at(10).value = unit ?? ''
  at(11).value = against
  if (working !== undefined) at(12).value = working
  const lines = Math.max(
    Math.ceil((working?.length ?? 0) / 76),
    Math.ceil(label.length / 36),
    Math.ceil(test.file.length / 36),
    ...[recorded, expected].map((one) => Math.ceil(String(one ?? '').length / 20)),
  )
  // Texts of hundreds of characters (a record as data) are cut by the row, not by us: the cell holds all.
  sheet.getRow(row).height = 13.5 * Math.min(Math.max(1, lines), 8)
  underline(sheet, row, columns.length)
}

function value(sheet: Worksheet, row: number, column: number, content: Difference['recorded']): void {
  const cell = dress(sheet.getCell(row, column), {
    alignment: { ...wrap, horizontal: typeof content === 'number' ? 'right' : 'left' },
    ...(typeof content === 'number' && { numFmt: formatFor(content) }),
  })
  cell.value = content ?? '(nothing)'
}
