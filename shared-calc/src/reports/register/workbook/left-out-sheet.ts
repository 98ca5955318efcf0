import type { Workbook } from 'exceljs'
import { counted } from '../../../catalogue/words.js'
import { madeUnder } from '../../workbook/new-workbook.js'
import { setUpPage } from '../../workbook/page.js'
import { dress, fonts, headingRow, heightFor, underline, wrap } from '../../workbook/styles.js'
import type { Register } from '../register.js'
import { titleOf } from './register-sheet.js'

export const LEFT_OUT_SHEET = 'Left out'
const COLUMNS = 3

/** First row of the files. */
export const FIRST_LEFT_OUT = 4
/** What is said of the kind of a file that has no kind of its own. */
export const otherKinds = { expected: 'not a test', unread: 'could not be read' } as const

/** Every file that is not in the register, with the reason, and below them the calculation version. */
export function writeLeftOutSheet(workbook: Workbook, register: Register, version: string | null): void {
  const sheet = workbook.addWorksheet(LEFT_OUT_SHEET, { views: [{ showGridLines: false }] })
  sheet.columns = [60, 24, 90].map((width) => ({ width }))
  dress(sheet.getCell('A1'), { font: fonts.title }).value = 'Left out'
  sheet.getRow(1).height = 26
  headingRow(sheet, 3, 'File', COLUMNS)
  sheet.getCell(3, 2).value = 'Kind'
  sheet.getCell(3, 3).value = 'Why it is not in the register'
  const { leftOut } = register
  if (leftOut.length === 0)
    dress(sheet.getCell(FIRST_LEFT_OUT, 1), {}).value = 'None. Every file is in the register.'
  leftOut.forEach(({ file, part, why, kind, expected }, i) => {
    dress(sheet.getCell(FIRST_LEFT_OUT + i, 1), { alignment: wrap }).value =
      part === undefined ? file : `${file} (${part})`
    dress(sheet.getCell(FIRST_LEFT_OUT + i, 2), { alignment: wrap }).value =
      kind ?? (expected ? otherKinds.expected : otherKinds.unread)
    dress(sheet.getCell(FIRST_LEFT_OUT + i, 3), { alignment: wrap }).value = why
    sheet.getRow(FIRST_LEFT_OUT + i).height = Math.max(heightFor(file, 64), heightFor(why, 96))
    underline(sheet, FIRST_LEFT_OUT + i, COLUMNS)
  })
  dress(sheet.getCell(5 + Math.max(leftOut.length, 1), 1), {
    font: fonts.muted,
  }).value = [
    `${counted(register.rows.length, 'row')} in the register, ${counted(leftOut.length, 'file or test', 'files or tests')} left out`,
    ...(version === null ? [] : [madeUnder(version)]),
  ].join('. ')
  setUpPage(sheet, {
    landscape: true,
    title: titleOf(register),
    lastRow: 5 + Math.max(leftOut.length, 1),
    lastColumn: COLUMNS,
    repeat: '3:3',
  })
}
