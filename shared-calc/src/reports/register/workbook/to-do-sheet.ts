import type { Workbook, Worksheet } from 'exceljs'
import { outcomeWords } from '../../../catalogue/words.js'
import { setUpPage } from '../../workbook/page.js'
import { dress, fonts, headingRow, underline, wrap } from '../../workbook/styles.js'
import type { RegisterRow } from '../arrange.js'
import { CALIBRATION_DAYS } from '../calibrations.js'
import type { Register } from '../register.js'
import { AS_OF, dateOf, REGISTER_SHEET } from './columns.js'
import { titleOf } from './register-sheet.js'
import { writeRetests } from './retests.js'

export const TO_DO_SHEET = 'To do'
const COLUMNS = 7

/** What the office must still act on: retests, calibrations, findings, workbooks that are not as issued. */
export function writeToDoSheet(workbook: Workbook, register: Register): void {
  const sheet = workbook.addWorksheet(TO_DO_SHEET, { views: [{ showGridLines: false }] })
  sheet.columns = [8, 22, 18, 14, 12, 14, 70].map((width) => ({ width }))
  dress(sheet.getCell('A1'), { font: fonts.title }).value = 'To do'
  sheet.getRow(1).height = 26
  let row = writeRetests(sheet, 3, register)
  row = retestsElsewhere(sheet, row + 1, register)
  row = calibrations(sheet, row + 1, register)
  row = findings(sheet, row + 1, register)
  row = altered(sheet, row + 1, register)
  setUpPage(sheet, { landscape: true, title: titleOf(register), lastRow: row, lastColumn: COLUMNS })
}

type Cell = string | number | Date | { formula: string; result: string | number }

function section(
  sheet: Worksheet,
  start: number,
  title: string,
  heads: readonly string[],
  rows: readonly (readonly Cell[])[],
): number {
  headingRow(sheet, start, `${title}: ${rows.length === 0 ? 'none' : rows.length}`, COLUMNS)
  if (rows.length === 0) return start + 1
  heads.forEach((head, i) => {
    dress(sheet.getCell(start + 1, i + 1), { font: fonts.bold }).value = head
  })
  rows.forEach((cells, r) => {
    const row = start + 2 + r
    cells.forEach((content, i) => {
      dress(sheet.getCell(row, i + 1), {
        alignment: { ...wrap, horizontal: 'left' },
        ...(content instanceof Date && { numFmt: 'yyyy-mm-dd' }),
        ...(i === 5 && { numFmt: '0.00' }),
      }).value = content
    })
    const text = cells[COLUMNS - 1]
    if (typeof text === 'string' && text.length > 78)
      sheet.getRow(row).height = 13.5 * Math.ceil(text.length / 78)
    underline(sheet, row, COLUMNS)
  })
  return start + 2 + rows.length
}

/** No., site, plot, stage and date of a test, as they stand in the register. */
const identity = ({ row, site, building, stage, date }: RegisterRow): Cell[] => [
  row,
  site ?? '',
  building,
  stage ?? '',
  dateOf(date),
]

function retestsElsewhere(sheet: Worksheet, start: number, { month, toRetestElsewhere }: Register): number {
  if (month === undefined) return start - 1
  return section(
    sheet,
    start,
    'Still to be retested, from other months',
    ['', 'Site', 'Plot', 'Stage', 'Date', 'Margin', 'Verdict and file'],
    toRetestElsewhere.map(({ site, building, stage, date, judged, outcome, file }) => [
      '',
      site ?? '',
      building,
      stage ?? '',
      dateOf(date),
      judged?.margin ?? '',
      `${outcomeWords[outcome]}: ${file}`,
    ]),
  )
}

function calibrations(sheet: Worksheet, start: number, { calibrations: expiring }: Register): number {
  return section(
    sheet,
    start,
    `Calibrations that expire within ${CALIBRATION_DAYS} days or have expired`,
    ['Days left', 'Instrument', 'Serial number', '', 'Due', '', 'Used in tests'],
    expiring.map(({ instrument, serial, due, days, rows }, i) => [
      { formula: `$E${start + 2 + i}-${REGISTER_SHEET}!${AS_OF}`, result: days },
      instrument,
      serial ?? 'not logged',
      '',
      dateOf(due),
      '',
      rows.join(', '),
    ]),
  )
}

function findings(sheet: Worksheet, start: number, { rows }: Register): number {
  const rank = { invalidates: 0, caution: 1, note: 2 }
  return section(
    sheet,
    start,
    'Findings that invalidate a test, and cautions',
    ['No.', 'Site', 'Plot', 'Stage', 'Date', 'Severity', 'Finding'],
    rows
      .filter(({ role }) => role !== 'altered')
      .flatMap((test) =>
        [...test.findings]
          .filter(({ severity }) => severity !== 'note')
          .sort((a, b) => rank[a.severity] - rank[b.severity])
          .map(({ severity, message }) => [...identity(test), severity, message]),
      ),
  )
}

function altered(sheet: Worksheet, start: number, { rows }: Register): number {
  return section(
    sheet,
    start,
    'Workbooks and tests to check',
    ['No.', 'Site', 'Plot', 'Stage', 'Date', '', 'What'],
    rows
      .filter((test) => test.altered !== undefined || test.remark !== undefined)
      .map((test) => [
        ...identity(test),
        '',
        [test.altered && `${test.altered}. Re-run this workbook.`, test.remark].filter(Boolean).join('; '),
      ]),
  )
}
