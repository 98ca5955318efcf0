import { numberFormat, results } from '../../../catalogue/figures.js'
import { decimalsBeside, unitText } from '../../../catalogue/shown-figure.js'
import { outcomeWords } from '../../../catalogue/words.js'
import { toLimitInSheet } from '../../../engine/index.js'
import { fileLink } from '../../workbook/file-link.js'
import type { RegisterRow } from '../arrange.js'
import { daysBetween } from '../calibrations.js'
import { asksForRetest, classesOfTests, isBillable, isTest } from '../test-classes.js'
import { NOT_LOGGED } from '../totals.js'

export const REGISTER_SHEET = 'Register'
/** Dates on sheets, in English 10 Oct 2026. */
export const DATE_FORMAT = 'd mmm yyyy'
/** First row of tests; the row above holds the headings. */
export const FIRST_ROW = 7
/** Cell with the date on which calibrations are judged. */
export const AS_OF = '$C$3'

export type CellContent =
  | string
  | number
  | Date
  | { readonly formula: string; readonly result: string | number }
  | { readonly text: string; readonly hyperlink: string }
  | null

/** A heading in one line: it may be hyphenated where its column is narrow. */
export const headInWords = (head: string): string => head.replace(/-\n/g, '').replace(/\s+/g, ' ')

/** What cells depend on besides their row. */
export interface SheetSurroundings {
  readonly asOf: string
  /** Path of a file as seen from where the register is written. */
  readonly seenFrom: (file: string) => string
}

/** One column of the register. */
export interface RegisterColumn {
  readonly key: string
  readonly head: string
  readonly width: number
  /** Number format; of some columns it depends on the row. */
  readonly numFmt?: string | ((row: RegisterRow) => string)
  readonly align?: 'right' | 'left' | 'center'
  /** @param cell - address of another column in the same row */
  readonly content: (row: RegisterRow, cell: (key: string) => string, about: SheetSurroundings) => CellContent
}

export const dateOf = (iso: string): Date => new Date(`${iso}T00:00:00Z`)

const figure = (key: 'n50' | 'qE50' | 'qF50' | 'q50' | 'ela4'): RegisterColumn => ({
  key,
  head: `${results[key].short}\n${unitText(results[key].unit)}`,
  width: 9,
  numFmt: numberFormat(results[key]),
  align: 'right',
  content: (row) => issued(row)?.results[key] ?? null,
})

/** A row whose figures are as issued; undefined for one that was altered, so that nothing of it is quoted. */
const issued = (row: RegisterRow): RegisterRow | undefined => (row.role === 'altered' ? undefined : row)

const text = (
  key: string,
  head: string,
  width: number,
  content: (row: RegisterRow) => CellContent,
): RegisterColumn => ({ key, head, width, align: 'left', content })

/** The earliest date on which an instrument of the test must be calibrated again. */
const earliestDue = ({ gauge, device }: RegisterRow): string | undefined =>
  [gauge.calibrationDue, device.calibrationDue].filter((due) => due !== undefined).sort()[0]

/** As many decimals as value, limit and margin need not to contradict the verdict. */
function besideLimit(row: RegisterRow): string {
  const judged = issued(row)?.judged
  return judged ? `0.${'0'.repeat(decimalsBeside(judged))}` : '0.00'
}

const NOT_LOGGED_TEXT = (value: string | undefined): string => value ?? NOT_LOGGED

const count = (key: string, head: string, counted: (row: RegisterRow) => number): RegisterColumn => ({
  key,
  head,
  width: 7,
  align: 'right',
  numFmt: '0',
  content: counted,
})

const yesNo = (condition: string, result: boolean) => ({
  formula: `IF(${condition},"yes","no")`,
  result: result ? 'yes' : 'no',
})

/** Condition that a row stands for a test. */
const isTestIn = (role: string): string =>
  `OR(${classesOfTests.map((name) => `${role}="${name}"`).join(',')})`

/** The register's columns in their order; those up to `printedColumns` are printed. */
export const columns: readonly RegisterColumn[] = [
  { key: 'row', head: 'No.', width: 5, align: 'right', numFmt: '0', content: ({ row }) => row },
  text('site', 'Site', 22, ({ site }) => NOT_LOGGED_TEXT(site)),
  text('plot', 'Plot', 15, ({ building }) => building),
  text('stage', 'Stage', 13, ({ stage }) => NOT_LOGGED_TEXT(stage)),
  {
    key: 'date',
    head: 'Date',
    width: 12,
    numFmt: DATE_FORMAT,
    align: 'left',
    content: ({ date }) => dateOf(date),
  },
  text('tester', 'Tester', 14, ({ tester }) => NOT_LOGGED_TEXT(tester)),
  figure('n50'),
  figure('qE50'),
  text('judged', 'Judged', 8, (row) => issued(row)?.judged?.quantity ?? ''),
  {
    key: 'value',
    head: 'Value',
    width: 8,
    numFmt: besideLimit,
    align: 'right',
    content: (row) => issued(row)?.judged?.value ?? null,
  },
  {
    key: 'limit',
    head: 'Limit',
    width: 8,
    numFmt: besideLimit,
    align: 'right',
    content: (row) => issued(row)?.judged?.limit ?? null,
  },
  {
    key: 'margin',
    head: 'Margin',
    width: 8,
    numFmt: besideLimit,
    align: 'right',
    content: (row, cell) => ({
      // Equal within 1e-9 of the limit is equal, as in the verdict.
      formula: `IF(AND(ISNUMBER(${cell('value')}),ISNUMBER(${cell('limit')})),${cell('limit')}-${toLimitInSheet(cell('value'), cell('limit'))},"")`,
      result: issued(row)?.judged?.margin ?? '',
    }),
  },
  {
    key: 'verdict',
    head: 'Verdict',
    width: 11,
    align: 'left',
    content: ({ outcome, role }, cell) => ({
      formula: `IF(${cell('role')}="altered","altered",IF(${cell('margin')}="","no target",IF(${cell('invalidating')}>0,"not valid",IF(${cell('margin')}>=0,"meets","fails"))))`,
      result: role === 'altered' ? 'altered' : outcomeWords[outcome],
    }),
  },
  count('findings', 'Find-\nings', (row) => issued(row)?.findings.length ?? 0),
  text('role', 'Class', 19, ({ role }) => role),
  {
    key: 'of',
    head: 'repeats\nNo.',
    width: 7,
    numFmt: '0',
    align: 'right',
    content: ({ of }) => of ?? null,
  },
  {
    key: 'counts',
    head: 'In\ntotals',
    width: 8,
    align: 'left',
    content: ({ counts }, cell) => yesNo(`AND(${isTestIn(cell('role'))},${cell('superseded')}="")`, counts),
  },
  {
    key: 'days',
    head: 'Days\nleft',
    width: 6,
    numFmt: '0',
    align: 'right',
    content: (row, cell, { asOf }) => {
      const due = earliestDue(row)
      return {
        formula: `IF(ISNUMBER(${cell('due')}),${cell('due')}-${AS_OF},"")`,
        result: due === undefined ? '' : daysBetween(asOf, due),
      }
    },
  },
  {
    key: 'due',
    head: 'Calibration\ndue',
    width: 13,
    numFmt: DATE_FORMAT,
    align: 'left',
    content: (row) => {
      const due = earliestDue(row)
      return due === undefined ? 'not logged' : dateOf(due)
    },
  },
  figure('q50'),
  figure('qF50'),
  figure('ela4'),
  count(
    'invalidating',
    'Invali-\ndating',
    (row) => issued(row)?.findings.filter(({ severity }) => severity === 'invalidates').length ?? 0,
  ),
  {
    key: 'superseded',
    head: 'Superseded\nby No.',
    width: 11,
    numFmt: '0',
    align: 'right',
    content: ({ supersededBy, counts, role }) =>
      supersededBy ?? (isTest(role) && !counts ? 'elsewhere' : null),
  },
  text('latest', 'Last test\nof plot', 9, ({ latest }) => (latest ? 'yes' : 'no')),
  {
    key: 'retest',
    head: 'Still to be\nretested',
    width: 10,
    align: 'left',
    content: (row, cell) =>
      yesNo(
        `AND(${cell('latest')}="yes",OR(${cell('verdict')}="fails",${cell('verdict')}="not valid"))`,
        row.latest && asksForRetest(row),
      ),
  },
  {
    key: 'billed',
    head: 'To bill',
    width: 8,
    align: 'left',
    content: (row, cell) =>
      yesNo(`AND(${isTestIn(cell('role'))},${cell('verdict')}<>"not valid")`, isBillable(row)),
  },
  text('client', 'Client', 24, ({ client }) => NOT_LOGGED_TEXT(client)),
  text('number', 'Test number', 16, ({ testNumber }) => testNumber ?? ''),
  text('order', 'Order\nnumber', 14, ({ orderNumber }) => orderNumber ?? ''),
  {
    key: 'fee',
    head: 'Fee',
    width: 10,
    numFmt: '#,##0.00',
    align: 'right',
    content: ({ fee }) => fee ?? null,
  },
  text('target', 'Target', 30, (row) => issued(row)?.judged?.label ?? ''),
  {
    key: 'file',
    head: 'File',
    width: 40,
    align: 'left',
    content: ({ file, part }, _, { seenFrom }) => ({
      text: part === undefined ? file : `${file} (${part})`,
      hyperlink: fileLink(seenFrom(file)),
    }),
  },
  text('altered', 'To check', 44, ({ altered, remark }) => [altered, remark].filter(Boolean).join('; ')),
  text('version', 'Calculation', 12, ({ calculationVersion }) => calculationVersion),
]

/** How many columns from the left go onto paper. */
export const printedColumns = columns.findIndex(({ key }) => key === 'days') + 1
