import { makeRegister, writeRegisterWorkbook } from '@draughtbook/shared-calc/register'
import ExcelJS from 'exceljs'
import { describe, expect, it } from 'vitest'
import { type CellResult, readCells } from '../support/formula-cells'
import { cellUnder } from './cell-under'
import { type InventedHouse, inventedHouses, type Truth } from './invented-lines'

const houses = inventedHouses(353)
const lines = houses.flatMap((house) => house.lines)
const register = makeRegister(
  // Files come in any order.
  [...lines].reverse(),
  [],
  { month: '2026-10', asOf: '2026-10-31' },
)

const tally = (key: keyof Truth, of: readonly InventedHouse[] = houses): number =>
  of.reduce((sum, { truth }) => sum + (truth[key] ?? 0), 0)
const clients = [...new Set(houses.map(({ client }) => client ?? '(not logged)'))]
const housesOf = (name: string) => houses.filter(({ client = '(not logged)' }) => client === name)

describe('a month of 500 invented tests', () => {
  it('has in every class the number of tests that were made for it', () => {
    expect(lines.length).toBeGreaterThanOrEqual(500)
    expect(register.overall).toMatchObject({
      tests: tally('rows'),
      classes: {
        'first test': tally('firsts'),
        repeat: tally('repeats'),
        'retest without its first test': tally('unpaired'),
        'earlier issue': tally('earlierIssues'),
        duplicate: tally('duplicates'),
        altered: tally('altered'),
      },
      superseded: tally('superseded'),
      billable: tally('billable'),
      firstTests: tally('firstJudged'),
      firstMet: tally('firstMet'),
      notValid: tally('invalid'),
      noTarget: tally('noTarget'),
      toRetest: tally('retestHere'),
    })
    expect(register.overall.firstPassRate).toBeCloseTo(tally('firstMet') / tally('firstJudged'), 12)
    expect(register.toRetestElsewhere).toHaveLength(tally('retestElsewhere'))
  })

  it('bills each client for its own tests, and gives each its own register', () => {
    for (const name of clients) {
      const total = register.totals.client.find(({ group }) => group === name)
      expect([name, total?.billable]).toEqual([name, tally('billable', housesOf(name))])
      const own = makeRegister(lines, [], {
        month: '2026-10',
        asOf: '2026-10-31',
        client: name.toUpperCase(),
      })
      expect(own.rows).toHaveLength(tally('rows', housesOf(name)))
      expect(own.overall.billable).toBe(tally('billable', housesOf(name)))
      expect(own.toRetestElsewhere).toHaveLength(tally('retestElsewhere', housesOf(name)))
    }
  })

  it('keeps every count, list and comparison when its rows are sorted and filtered in a spreadsheet', async () => {
    const bytes = await sorted(await writeRegisterWorkbook(register), register.rows.length)
    const cells = await readCells(bytes)
    const compared = cells.filter(({ sheet }) => sheet !== 'Chart data' && sheet !== 'Register')
    expect(new Set(compared.map(({ sheet }) => sheet))).toEqual(
      new Set(['Totals', 'Trends', 'Stages', 'To do']),
    )
    expect(compared.filter(({ cached, recalculated }) => !same(cached, recalculated))).toEqual([])

    const workbook = await load(bytes)
    const names = workbook.getWorksheet('Totals')?.getColumn(1).values as (string | undefined)[]
    const counted = (name: string, column: string) =>
      cells.find(
        ({ sheet, address }) => sheet === 'Totals' && address === `${column}${names.lastIndexOf(name)}`,
      )?.recalculated
    expect(counted('duplicate', 'B')).toBe(tally('duplicates'))
    expect(counted('earlier issue', 'B')).toBe(tally('earlierIssues'))
    expect(counted('altered', 'B')).toBe(tally('altered'))
    expect(counted('superseded', 'B')).toBe(tally('superseded'))
    expect(counted('to bill', 'B')).toBe(tally('billable'))
    expect(counted('still to be retested', 'B')).toBe(tally('retestHere'))
    expect(counted('first-time pass rate', 'B')).toBeCloseTo(tally('firstMet') / tally('firstJudged'), 12)
    for (const name of clients) expect(counted(name, 'P')).toBe(tally('billable', housesOf(name)))
  })

  it('follows a correction: a figure typed over counts as it now stands', async () => {
    const wrong = register.rows.find(
      ({ role, outcome, latest, counts }) =>
        role === 'first test' && outcome === 'misses' && latest && counts,
    )
    const workbook = await load(await writeRegisterWorkbook(register))
    const sheet = workbook.getWorksheet('Register')
    if (!sheet || !wrong?.judged) throw new Error('no first test that misses')
    cellUnder(sheet, 'Value', wrong.row).value = wrong.judged.limit / 2
    const cells = await readCells(new Uint8Array(await workbook.xlsx.writeBuffer()))
    const names = workbook.getWorksheet('Totals')?.getColumn(1).values as (string | undefined)[]
    const counted = (name: string, column = 'B') =>
      cells.find(({ sheet: on, address }) => on === 'Totals' && address === `${column}${names.indexOf(name)}`)
        ?.recalculated
    const { meets, misses } = register.overall
    expect([counted('all', 'D'), counted('all', 'E')]).toEqual([meets + 1, misses - 1])
    expect(counted('still to be retested')).toBe(tally('retestHere') - 1)
    expect(counted('first-time pass rate')).toBeCloseTo((tally('firstMet') + 1) / tally('firstJudged'), 12)
    expect(counted('to bill')).toBe(tally('billable'))
  }, 120_000)

  it('quotes no figure of an altered summary', async () => {
    const sheet = (await load(await writeRegisterWorkbook(register))).getWorksheet('Register')
    const altered = register.rows.filter(({ role }) => role === 'altered')
    expect(altered.length).toBe(tally('altered'))
    for (const { row } of altered) {
      if (!sheet) throw new Error('no register')
      const figures = [
        'n50 1/h',
        'qE50 m³/(h·m²)',
        'qF50 m³/(h·m²)',
        'q50 m³/h',
        'ELA 4 Pa cm²',
        'Value',
        'Limit',
      ]
      const shown = figures.map((head) => cellUnder(sheet, head, row).value)
      expect(shown.filter((value) => value !== null)).toEqual([])
      expect(cellUnder(sheet, 'Verdict', row).result).toBe('altered')
    }
  })
})

const same = (a: CellResult, b: CellResult): boolean =>
  typeof a === 'number' && typeof b === 'number'
    ? Math.abs(a - b) <= 1e-9 * Math.max(1, Math.abs(a))
    : a === b

/** The workbook with the register's rows in another order, each with its formulas, and every third one hidden. */
async function sorted(bytes: Uint8Array, rows: number): Promise<Uint8Array> {
  const workbook = await load(bytes)
  const sheet = workbook.getWorksheet('Register')
  if (!sheet) throw new Error('no register')
  const taken = Array.from({ length: rows }, (_, i) =>
    Array.from({ length: sheet.columnCount }, (_, c) => sheet.getCell(7 + i, c + 1).value),
  )
  taken.forEach((values, i) => {
    // 7 and the number of rows have no common divisor: every row gets a place of its own.
    const to = 7 + ((i * 7 + 3) % rows)
    values.forEach((value, c) => {
      sheet.getCell(to, c + 1).value =
        value !== null && typeof value === 'object' && 'formula' in value
          ? {
              ...value,
              formula: value.formula.replaceAll(new RegExp(`(\\$[A-Z]+)${7 + i}\\b`, 'g'), `$1${to}`),
            }
          : value
    })
    if (i % 3 === 0) sheet.getRow(to).hidden = true
  })
  expect(rows % 7).not.toBe(0)
  return new Uint8Array(await workbook.xlsx.writeBuffer())
}

async function load(content: Uint8Array): Promise<ExcelJS.Workbook> {
  const workbook = new ExcelJS.Workbook()
  await workbook.xlsx.load(content.slice().buffer)
  return workbook
}
