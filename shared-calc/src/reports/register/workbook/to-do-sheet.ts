import type { Workbook, Worksheet } from 'exceljs'
import { outcomeWords } from '../../../catalogue/words.js'
import { setUpPage } from '../../workbook/page.js'
import { dress, fonts, headingRow, heightFor, underline, wrap } from '../../workbook/styles.js'
import type { RegisterRow } from '../arrange.js'
import { CALIBRATION_DAYS } from '../calibrations.js'
import { grouped } from '../grouped.js'
import type { Register } from '../register.js'
import type { LineFinding } from '../test-line.js'
import { AS_OF, DATE_FORMAT, dateOf, REGISTER_SHEET } from './columns.js'
import { titleOf } from './register-sheet.js'
import { writeRetests } from './retests.js'

export const TO_DO_SHEET = 'To do'
const WIDTHS = [8, 22, 18, 14, 12, 14, 70] as const
const COLUMNS = WIDTHS.length

/** What the office must still act on: retests, calibrations, findings, workbooks that are not as issued. */
export function writeToDoSheet(workbook: Workbook, register: Register): void {
  const sheet = workbook.addWorksheet(TO_DO_SHEET, { views: [{ showGridLines: false }] })
  sheet.columns = WIDTHS.map((width) => ({ width }))
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
        ...(content instanceof Date && { numFmt: DATE_FORMAT }),
        ...(i === 5 && { numFmt: '0.00' }),
      }).value = content
    })
    sheet.getRow(row).height = Math.max(
      ...cells.map((content, i) => (typeof content === 'string' ? heightFor(content, lineOf(i)) : 0)),
      heightFor('', 1),
    )
    underline(sheet, row, COLUMNS)
  })
  return start + 2 + rows.length
}

/** Characters of the body font in a line of a column. */
const lineOf = (column: number): number => (WIDTHS[column] ?? 10) * 1.15

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
      `No. ${ranges(rows)}`,
    ]),
  )
}

function findings(sheet: Worksheet, start: number, { rows }: Register): number {
  const found = rows
    .filter(({ role }) => role !== 'altered')
    .flatMap((test) => test.findings.map((finding) => ({ test, finding })))
  const invalidating = found.filter(({ finding }) => finding.severity === 'invalidates')
  // A wrong range makes one finding for each reading: of a test, each rule has one row.
  const kinds = [...grouped(invalidating, ({ test, finding }) => `${test.row} ${finding.rule}`).values()]
  const next = section(
    sheet,
    start,
    'Findings that invalidate a test',
    ['No.', 'Site', 'Plot', 'Stage', 'Date', '', 'Finding'],
    kinds.flatMap(([first, ...others]) =>
      first ? [[...identity(first.test), '', `${first.finding.message}${andMore(others.length)}`]] : [],
    ),
  )
  return cautions(
    sheet,
    next + 1,
    found.filter(({ finding }) => finding.severity === 'caution'),
  )
}

const andMore = (count: number): string => (count === 0 ? '' : ` (and ${count} more of this kind)`)

/** Cautions that many tests have alike, each once. */
function cautions(
  sheet: Worksheet,
  start: number,
  found: readonly { readonly test: RegisterRow; readonly finding: LineFinding }[],
): number {
  const kinds = [...grouped(found, ({ finding }) => finding.rule).values()]
  headingRow(sheet, start, `Cautions: ${found.length === 0 ? 'none' : found.length}`, COLUMNS)
  if (found.length === 0) return start + 1
  const write = (
    row: number,
    texts: readonly [string | number, string | number, string],
    font = fonts.body,
  ) => {
    sheet.mergeCells(row, 2, row, CAUTION_AT - 1)
    sheet.mergeCells(row, CAUTION_AT, row, COLUMNS)
    ;[1, 2, CAUTION_AT].forEach((column, i) => {
      dress(sheet.getCell(row, column), { font, alignment: { ...wrap, horizontal: 'left' } }).value =
        texts[i] ?? ''
    })
    const width = (from: number, to: number) =>
      WIDTHS.slice(from - 1, to).reduce((sum, one) => sum + one, 0) * 1.15
    sheet.getRow(row).height = Math.max(
      heightFor(String(texts[1]), width(2, CAUTION_AT - 1)),
      heightFor(texts[2], width(CAUTION_AT, COLUMNS)),
    )
  }
  write(start + 1, ['Tests', 'No.', 'Caution'], fonts.bold)
  kinds.forEach((kind, k) => {
    const messages = new Set(kind.map(({ finding }) => finding.message))
    const [first = ''] = messages
    const text =
      messages.size === 1 ? first : `${first} (No. ${kind[0]?.test.row}; the figures of the others differ)`
    const rows = new Set(kind.map(({ test }) => test.row))
    const [only = ''] = rows
    write(start + 2 + k, [rows.size, rows.size === 1 ? only : ranges([...rows]), text])
    underline(sheet, start + 2 + k, COLUMNS)
  })
  return start + 2 + kinds.length
}
/** Column of the texts of cautions. */
const CAUTION_AT = 4

/** Numbers in their order, those in a row as a range: 1–4, 7. */
export function ranges(numbers: readonly number[]): string {
  const sorted = [...new Set(numbers)].sort((a, b) => a - b)
  const runs: [number, number][] = []
  for (const number of sorted) {
    const last = runs.at(-1)
    if (last && number === last[1] + 1) last[1] = number
    else runs.push([number, number])
  }
  return runs.map(([from, to]) => (from === to ? `${from}` : `${from}–${to}`)).join(', ')
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
