import type { Workbook } from 'exceljs'
import { linkTo } from '../../workbook/file-link.js'
import { PROBABILITY_FORMAT } from '../../workbook/live-cell.js'
import { setUpPage } from '../../workbook/page.js'
import { dress, fonts, headingRow, heightFor, underline, wrap } from '../../workbook/styles.js'
import type { Register } from '../register.js'
import { titleOf } from './register-sheet.js'

export const BUILDINGS_SHEET = 'Buildings'

const heads: readonly (readonly [string, number])[] = [
  ['Building', 26],
  ['Target', 30],
  ['Judged', 26],
  ['Tests', 18],
  ['Value', 10],
  ['Margin', 10],
  ['Probability of meeting', 20],
  ['Verdict', 12],
  ['File', 40],
]
/** Row of the first building. */
export const FIRST_BUILDING = 5

/** One row for each building of several homes whose workbook is among the files; none where there is none. */
export function writeBuildingsSheet(
  workbook: Workbook,
  register: Register,
  seenFrom: (file: string) => string,
): void {
  const buildings = register.leftOut.flatMap(({ file, building }) => (building ? [{ file, building }] : []))
  if (buildings.length === 0) return
  const sheet = workbook.addWorksheet(BUILDINGS_SHEET, { views: [{ showGridLines: false }] })
  sheet.columns = heads.map(([, width]) => ({ width }))
  dress(sheet.getCell('A1'), { font: fonts.title }).value = 'Buildings of several homes'
  sheet.getRow(1).height = 26
  dress(sheet.getCell('A2'), { font: fonts.muted }).value =
    'As their workbooks show them. They are not checked here and not in the totals; the tests of their homes are in the register where their summaries were given.'
  headingRow(sheet, FIRST_BUILDING - 1, '', heads.length)
  heads.forEach(([head], i) => {
    sheet.getCell(FIRST_BUILDING - 1, i + 1).value = head
  })
  buildings.forEach(({ file, building }, i) => {
    const row = FIRST_BUILDING + i
    const { name, target, judged, tests, verdict, value, margin, probability } = building
    ;[name, target, judged, tests].forEach((text, k) => {
      dress(sheet.getCell(row, k + 1), { alignment: wrap }).value = text
    })
    const numbers = [
      [value, '0.000'],
      [margin, '+0.000;-0.000;0.000'],
      [probability, PROBABILITY_FORMAT],
    ] as const
    numbers.forEach(([number, numFmt], k) => {
      dress(sheet.getCell(row, 5 + k), { numFmt, alignment: { vertical: 'top' } }).value = number ?? null
    })
    dress(sheet.getCell(row, 8), { alignment: { ...wrap, indent: 1, horizontal: 'left' } }).value = verdict
    linkTo(dress(sheet.getCell(row, 9), { alignment: wrap }), file, seenFrom(file))
    sheet.getRow(row).height = Math.max(heightFor(name, 26), heightFor(target, 30), heightFor(file, 40))
    underline(sheet, row, heads.length)
  })
  setUpPage(sheet, {
    landscape: true,
    title: titleOf(register),
    lastRow: FIRST_BUILDING + buildings.length - 1,
    lastColumn: heads.length,
  })
}
