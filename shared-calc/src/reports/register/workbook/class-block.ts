import type { Worksheet } from 'exceljs'
import { dress, fonts, headingRow, underline } from '../../workbook/styles.js'
import type { Register } from '../register.js'
import { classesOfTests, type TestClass, testClasses } from '../test-classes.js'
import { columnRange } from './places.js'

interface Line {
  readonly name: string
  readonly words: string
  /** Undefined: a plain number. */
  readonly formula?: string
  readonly result: number | ''
  readonly numFmt?: string
}

/** Addresses of totals of all tests that stand elsewhere on the sheet. */
export interface TotalPlaces {
  readonly passRate: string
  readonly billable: string
  readonly toRetest: string
  readonly fees: string
}

/**
 * The classes of the register's rows and what is worked out from them, each in words and counted by a formula.
 * Returns the row after the block.
 */
export function writeClassBlock(
  sheet: Worksheet,
  start: number,
  register: Register,
  places: TotalPlaces,
  columns: number,
): number {
  headingRow(sheet, start, 'Classes: each row of the register is in exactly one', columns)
  const next = writeLines(sheet, start + 1, classLines(register), columns)
  headingRow(sheet, next + 1, 'Calculated from the classes', columns)
  return writeLines(sheet, next + 2, workedOut(register, places), columns)
}

function classLines({ rows, overall }: Register): Line[] {
  const role = columnRange('role', rows.length)
  return Object.entries(testClasses).map(([name, words]) => ({
    name,
    words,
    formula: `COUNTIF(${role},"${name}")`,
    result: overall.classes[name as TestClass],
  }))
}

function workedOut({ rows, overall, month, toRetestElsewhere }: Register, places: TotalPlaces): Line[] {
  const of = (key: string) => columnRange(key, rows.length)
  const inTotals = (verdict: string) => `COUNTIFS(${of('counts')},"yes",${of('verdict')},"${verdict}")`
  const test = classesOfTests.map((name) => `(${of('role')}="${name}")`).join('+')
  return [
    {
      name: 'in totals',
      words: 'First tests, repeats and retests that no later test of the same plot and stage replaces.',
      formula: `COUNTIF(${of('counts')},"yes")`,
      result: overall.counting,
    },
    {
      name: 'superseded',
      words: 'First tests, repeats and retests that a later test of the same plot and stage replaces.',
      formula: `SUMPRODUCT((${test})*(${of('superseded')}<>""))`,
      result: overall.superseded,
    },
    {
      name: 'superseded by a deleted row',
      words:
        'Superseded tests whose later test is no longer on sheet Register. To count one again, clear its cell "Superseded by No." and correct "Last test of plot".',
      formula: `SUMPRODUCT(ISNUMBER(${of('superseded')})*ISNA(MATCH(${of('superseded')},${of('row')},0)))`,
      result: 0,
    },
    {
      name: 'not valid',
      words: 'Tests in totals with a finding that invalidates them.',
      formula: inTotals('not valid'),
      result: overall.notValid,
    },
    {
      name: 'no target',
      words: 'Tests in totals without a target.',
      formula: inTotals('no target'),
      result: overall.noTarget,
    },
    {
      name: 'first-time pass rate',
      words:
        'First tests that meet their target, as a share of first tests that have one. A first test that is not valid did not pass.',
      formula: places.passRate,
      result: overall.firstPassRate ?? '',
      numFmt: '0 %',
    },
    {
      name: 'to bill',
      words:
        'First tests, repeats and retests, superseded or not, each once; without those that are not valid. Per client below.',
      formula: places.billable,
      result: overall.billable,
    },
    ...(overall.fees === undefined
      ? []
      : [
          {
            name: 'fees to bill',
            words: 'Sum of the fees of tests to bill, from the list of orders. Per client below.',
            formula: places.fees,
            result: overall.fees,
            numFmt: '#,##0.00',
          },
          {
            name: 'to bill, fee not known',
            words: 'Tests to bill for which the list of orders has no fee. They are not in the sum.',
            formula: `SUMPRODUCT((${of('billed')}="yes")*(1-ISNUMBER(${of('fee')})))`,
            result: overall.withoutFee ?? 0,
          },
        ]),
    {
      name: 'still to be retested',
      words:
        'Plots whose last test, in all files given and not only in this register, fails or is not valid.',
      formula: places.toRetest,
      result: overall.toRetest,
    },
    ...(month === undefined
      ? []
      : [
          {
            name: 'the same, from other months',
            words: 'Such plots whose last test is not in this register. Sheet To do lists them.',
            result: toRetestElsewhere.length,
          },
        ]),
  ]
}

function writeLines(sheet: Worksheet, start: number, lines: readonly Line[], columns: number): number {
  lines.forEach(({ name, words, formula, result, numFmt = '0' }, i) => {
    const row = start + i
    dress(sheet.getCell(row, 1), {}).value = name
    dress(sheet.getCell(row, 2), { font: fonts.bold, numFmt, alignment: { horizontal: 'right' } }).value =
      formula === undefined ? result : { formula, result }
    dress(sheet.getCell(row, 3), { alignment: { horizontal: 'left', indent: 1 } }).value = words
    underline(sheet, row, columns)
  })
  return start + lines.length
}
