import type { Workbook, Worksheet } from 'exceljs'
import { results } from '../../../catalogue/figures.js'
import { unitText } from '../../../catalogue/shown-figure.js'
import { columnLetters } from '../../workbook/address.js'
import { setUpPage } from '../../workbook/page.js'
import { dress, fills, fonts, headingRow, heightFor, underline, wrap } from '../../workbook/styles.js'
import type { Register } from '../register.js'
import { type Grouping, groupings, type Totals } from '../totals.js'
import { writeClassBlock } from './class-block.js'
import { columnRange, letterOf } from './places.js'
import { titleOf } from './register-sheet.js'

export const TOTALS_SHEET = 'Totals'

interface TotalColumn {
  readonly head: string
  readonly width: number
  readonly numFmt: string
  readonly value: (totals: Totals) => number | ''
  /** @param group - condition for the group, as `(range=$A5)`; 1 for all tests */
  readonly formula: (group: string, of: (key: string) => string) => string
  /** Whether the formula works on arrays and must be entered as one. */
  readonly array?: boolean
}

const counted = (of: (key: string) => string): string => `(${of('counts')}="yes")`
const verdict = (word: string) => (group: string, of: (key: string) => string) =>
  `SUMPRODUCT(${group}*${counted(of)}*(${of('verdict')}="${word}"))`
const first = (group: string, of: (key: string) => string): string =>
  `SUMPRODUCT(${group}*(${of('role')}="first test")*(${of('verdict')}<>"no target"))`
const firstMet = (group: string, of: (key: string) => string): string =>
  `SUMPRODUCT(${group}*(${of('role')}="first test")*(${of('verdict')}="meets"))`
const over = (name: 'MEDIAN' | 'MAX', key: string) => (group: string, of: (key: string) => string) => {
  const chosen = `${group}*${counted(of)}*ISNUMBER(${of(key)})`
  return `IF(SUMPRODUCT(${chosen})=0,"",${name}(IF(${chosen}=1,${of(key)})))`
}

const PASS_RATE = 'first-time\npass rate'
const TO_BILL = 'to bill'
const FEES = 'fees\nto bill'
const TO_RETEST = 'still to be\nretested'

const totalColumns: readonly TotalColumn[] = [
  {
    head: 'rows',
    width: 8,
    numFmt: '0',
    value: ({ tests }) => tests,
    formula: (group, of) => `SUMPRODUCT(${group}*(${of('plot')}<>""))`,
  },
  {
    head: 'included\nin totals',
    width: 9,
    numFmt: '0',
    value: ({ counting }) => counting,
    formula: (group, of) => `SUMPRODUCT(${group}*${counted(of)})`,
  },
  { head: 'meets', width: 8, numFmt: '0', value: ({ meets }) => meets, formula: verdict('meets') },
  { head: 'fails', width: 8, numFmt: '0', value: ({ misses }) => misses, formula: verdict('fails') },
  {
    head: 'not\nvalid',
    width: 8,
    numFmt: '0',
    value: ({ notValid }) => notValid,
    formula: verdict('not valid'),
  },
  {
    head: 'no\ntarget',
    width: 8,
    numFmt: '0',
    value: ({ noTarget }) => noTarget,
    formula: verdict('no target'),
  },
  {
    head: 'first tests\njudged',
    width: 11,
    numFmt: '0',
    value: ({ firstTests }) => firstTests,
    formula: first,
  },
  {
    head: 'passed\nfirst time',
    width: 10,
    numFmt: '0',
    value: ({ firstMet: met }) => met,
    formula: firstMet,
  },
  {
    head: PASS_RATE,
    width: 11,
    numFmt: '0 %',
    value: ({ firstPassRate }) => firstPassRate ?? '',
    formula: (group, of) => `IF(${first(group, of)}=0,"",${firstMet(group, of)}/${first(group, of)})`,
  },
  {
    head: `${results.n50.short} median\n${unitText(results.n50.unit)}`,
    width: 11,
    numFmt: '0.00',
    value: ({ medianN50 }) => medianN50 ?? '',
    formula: over('MEDIAN', 'n50'),
    array: true,
  },
  {
    head: `${results.n50.short} worst\n${unitText(results.n50.unit)}`,
    width: 11,
    numFmt: '0.00',
    value: ({ worstN50 }) => worstN50 ?? '',
    formula: over('MAX', 'n50'),
    array: true,
  },
  {
    head: `${results.qE50.short} median\n${unitText(results.qE50.unit)}`,
    width: 12,
    numFmt: '0.00',
    value: ({ medianQE50 }) => medianQE50 ?? '',
    formula: over('MEDIAN', 'qE50'),
    array: true,
  },
  {
    head: `${results.qE50.short} worst\n${unitText(results.qE50.unit)}`,
    width: 12,
    numFmt: '0.00',
    value: ({ worstQE50 }) => worstQE50 ?? '',
    formula: over('MAX', 'qE50'),
    array: true,
  },
  {
    head: 'tests with\nfindings',
    width: 10,
    numFmt: '0',
    value: ({ withFindings }) => withFindings,
    formula: (group, of) => `SUMPRODUCT(${group}*(${of('findings')}>0))`,
  },
  {
    head: TO_BILL,
    width: 8,
    numFmt: '0',
    value: ({ billable }) => billable,
    formula: (group, of) => `SUMPRODUCT(${group}*(${of('billed')}="yes"))`,
  },
  {
    head: TO_RETEST,
    width: 10,
    numFmt: '0',
    value: ({ toRetest }) => toRetest,
    formula: (group, of) => `SUMPRODUCT(${group}*(${of('retest')}="yes"))`,
  },
  {
    head: FEES,
    width: 11,
    numFmt: '#,##0.00',
    value: ({ fees }) => fees ?? '',
    // Two arguments: texts in the column count as nothing.
    formula: (group, of) =>
      `IF(SUMPRODUCT(${group}*ISNUMBER(${of('fee')}))=0,"",SUMPRODUCT(${group}*(${of('billed')}="yes"),${of('fee')}))`,
  },
]

/** Headings of the blocks of totals below the first. */
export const headings: Readonly<Record<Grouping, string>> = {
  site: 'By site',
  stage: 'By stage',
  tester: 'By tester',
  client: 'By client',
}

const COLUMNS = totalColumns.length + 1
const NAME_WIDTH = 30

/** Row with the totals of all tests. */
export const ALL_TESTS_ROW = 5

/**
 * The formula of a column of totals, counted from 0, in a row of a block.
 * @param grouping - what the block groups by; absent: all tests
 * @param letter - letter of a column of the register; as this version writes it unless said
 */
export function totalFormula(
  column: number,
  row: number,
  tests: number,
  grouping?: Grouping,
  letter: (key: string) => string = letterOf,
): string | undefined {
  const of = (key: string) => columnRange(key, tests, letter(key))
  const condition = grouping ? `(${of(grouping)}=$A${row})` : '1'
  return totalColumns[column]?.formula(condition, of)
}

/** The formula of a column of totals, counted from 0, of the tests of a month such as 2026-10. */
export function monthFormula(column: number, month: string, tests: number): string | undefined {
  const [year = 0, number = 0] = month.split('-').map(Number)
  const date = columnRange('date', tests)
  const condition = `(${date}>=DATE(${year},${number},1))*(${date}<DATE(${year},${number + 1},1))`
  return totalColumns[column]?.formula(condition, (key) => columnRange(key, tests))
}

/** Whether the formulas of a column of totals must be entered as array formulas. */
export const isArray = (column: number): boolean => totalColumns[column]?.array ?? false

/** The heading of a column of totals, counted from 0. */
export const totalHead = (column: number): string | undefined => totalColumns[column]?.head

/** Totals as live formulas over the register: what is corrected there changes here. */
export function writeTotalsSheet(workbook: Workbook, register: Register): void {
  const sheet = workbook.addWorksheet(TOTALS_SHEET, { views: [{ showGridLines: false }] })
  sheet.columns = [NAME_WIDTH, ...totalColumns.map(({ width }) => width)].map((width) => ({ width }))
  dress(sheet.getCell('A1'), { font: fonts.title }).value = 'Totals'
  sheet.getRow(1).height = 26
  dress(sheet.getCell('A2'), { font: fonts.muted }).value =
    'Formulas on sheet Register. They update when you correct or sort it, and include rows hidden by a filter.'
  const tests = register.rows.length
  let row = writeBlock(sheet, ALL_TESTS_ROW - 1, 'All tests', [register.overall], tests)
  const place = (head: string) =>
    `${columnLetters(totalColumns.findIndex((column) => column.head === head) + 2)}${ALL_TESTS_ROW}`
  const places = {
    passRate: place(PASS_RATE),
    billable: place(TO_BILL),
    toRetest: place(TO_RETEST),
    fees: place(FEES),
  }
  row = writeClassBlock(sheet, row + 1, register, places, COLUMNS)
  for (const grouping of groupings)
    row = writeBlock(sheet, row + 1, headings[grouping], register.totals[grouping], tests, grouping)
  setUpPage(sheet, { landscape: true, title: titleOf(register), lastRow: row, lastColumn: COLUMNS })
}

function writeBlock(
  sheet: Worksheet,
  start: number,
  title: string,
  groups: readonly Totals[],
  tests: number,
  grouping?: Grouping,
): number {
  headingRow(sheet, start, title, COLUMNS)
  sheet.getRow(start).height = 28
  totalColumns.forEach(({ head }, i) => {
    dress(sheet.getCell(start, i + 2), {
      font: fonts.bold,
      fill: fills.heading,
      alignment: { horizontal: 'right', vertical: 'bottom', wrapText: true },
    }).value = head
  })
  dress(sheet.getCell(start, 1), {
    font: fonts.heading,
    fill: fills.heading,
    alignment: { vertical: 'bottom' },
  })
  groups.forEach((totals, index) => {
    const row = start + 1 + index
    dress(sheet.getCell(row, 1), grouping ? { alignment: wrap } : { font: fonts.bold }).value = grouping
      ? totals.group
      : 'all'
    sheet.getRow(row).height = heightFor(grouping ? totals.group : '', NAME_WIDTH)
    totalColumns.forEach(({ numFmt, value, array }, i) => {
      const cell = dress(sheet.getCell(row, i + 2), {
        numFmt,
        alignment: { horizontal: 'right', vertical: 'top' },
      })
      const text = totalFormula(i, row, tests, grouping) ?? ''
      const result = value(totals)
      const plain = { formula: text, result }
      // The type of an array formula is missing from exceljs's own union of cell values.
      cell.value = array ? Object.assign(plain, { shareType: 'array', ref: cell.address }) : plain
    })
    underline(sheet, row, COLUMNS)
  })
  return start + 1 + groups.length
}
