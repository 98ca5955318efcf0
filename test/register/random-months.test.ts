import { makeRegister, type Register, writeRegisterWorkbook } from '@draughtbook/shared-calc/register'
import ExcelJS from 'exceljs'
import { describe, expect, it } from 'vitest'
import { type Edit, editInLibreOffice } from '../support/edit-in-libreoffice'
import { type InventedHouse, randomHouses, type Truth } from './invented-lines'

const SEEDS = [101, 202, 303, 404, 505, 606]
const ROWS = 500
const about = { month: '2026-10', asOf: '2026-10-31' }

const sum = (key: keyof Truth, of: readonly InventedHouse[]): number =>
  of.reduce((total, { truth }) => total + (truth[key] ?? 0), 0)

/** What the tests of some houses come to, counted by hand for each kind of house. */
const tallyOf = (houses: readonly InventedHouse[]) => ({
  tests: sum('rows', houses),
  classes: {
    'first test': sum('firsts', houses),
    repeat: sum('repeats', houses),
    'retest without its first test': sum('unpaired', houses),
    'earlier issue': sum('earlierIssues', houses),
    duplicate: sum('duplicates', houses),
    altered: sum('altered', houses),
  },
  superseded: sum('superseded', houses),
  counting:
    sum('firsts', houses) + sum('repeats', houses) + sum('unpaired', houses) - sum('superseded', houses),
  billable: sum('billable', houses),
  firstTests: sum('firstJudged', houses),
  firstMet: sum('firstMet', houses),
  notValid: sum('invalid', houses),
  noTarget: sum('noTarget', houses),
  toRetest: sum('retestHere', houses),
})

const clientOf = ({ client = '(not logged)' }: InventedHouse): string => client
const linesOf = (houses: readonly InventedHouse[]) => houses.flatMap(({ lines }) => lines)

describe.each(SEEDS)('a month of 500 tests drawn at random, seed %i', (seed) => {
  const houses = randomHouses(seed, ROWS)
  const register = makeRegister([...linesOf(houses)].reverse(), [], about)

  it('has every count that its houses were made for, and so has each client’s own list', () => {
    expect(register.rows.length).toBeGreaterThanOrEqual(ROWS)
    expect(register.overall).toMatchObject(tallyOf(houses))
    expect(register.toRetestElsewhere).toHaveLength(sum('retestElsewhere', houses))
    for (const client of new Set(houses.map(clientOf))) {
      const own = houses.filter((house) => clientOf(house) === client)
      expect(register.totals.client.find(({ group }) => group === client)).toMatchObject(tallyOf(own))
      expect(makeRegister(linesOf(houses), [], { ...about, client }).overall).toMatchObject(tallyOf(own))
    }
  })

  it('comes to the same whatever it is grouped by, and so do the months of all files', () => {
    const keys = ['tests', 'counting', 'meets', 'misses', 'notValid', 'billable', 'toRetest'] as const
    for (const groups of Object.values(register.totals))
      for (const key of keys)
        expect(groups.reduce((total, group) => total + group[key], 0)).toBe(register.overall[key])
    const all = makeRegister(linesOf(houses), [], { asOf: about.asOf })
    expect(all.trend.map(({ month }) => month)).toEqual(['2026-09', '2026-10', '2026-11'])
    for (const key of ['tests', 'counting', 'meets', 'misses', 'firstMet', 'billable'] as const)
      expect(all.trend.reduce((total, month) => total + (month[key] ?? 0), 0)).toBe(all.overall[key])
  })
})

describe('a register edited in LibreOffice', () => {
  const houses = randomHouses(707, ROWS)
  const one = (wanted: (house: InventedHouse) => boolean): InventedHouse => {
    const found = houses.find(wanted)
    if (!found) throw new Error('no such house')
    return found
  }
  const alone = ({ lines, truth }: InventedHouse) =>
    lines.length === 1 && truth.rows === 1 && truth.firsts === 1
  const met = one((house) => alone(house) && house.truth.firstMet === 1)
  const missed = one((house) => alone(house) && house.truth.retestHere === 1 && !house.truth.invalid)
  const copied = one(({ truth }) => truth.duplicates === 1)
  const retested = one(
    ({ truth, lines }) => lines.length === 2 && truth.superseded === 1 && !truth.retestHere,
  )
  const sort = (heads: readonly string[]): Edit => ({
    do: 'sort',
    by: ['Verdict', 'Client', 'Value'].map((head, i) => ({
      column: heads.indexOf(head) + 1,
      ascending: i > 0,
    })),
  })

  it('agrees with the tally after a correction, three deleted rows, a sort by three columns and a filter', async () => {
    const register = makeRegister(linesOf(houses), [], about)
    const bytes = await writeRegisterWorkbook(register)
    const heads = headsOf(await load(bytes))
    const rowOf = (house: InventedHouse, role?: string) => 6 + numberOf(register, house, role)
    const gone = [rowOf(met), rowOf(copied, 'duplicate'), rowOf(retested, 'repeat')].sort((a, b) => b - a)
    const edited = await load(
      await editInLibreOffice(bytes, tableOf(register, heads), [
        { do: 'set', row: rowOf(missed), column: heads.indexOf('Value') + 1, value: 0.3 },
        ...gone.map((row): Edit => ({ do: 'delete', row })),
        sort(heads),
        { do: 'filter', column: heads.indexOf('Verdict') + 1, text: 'fails' },
      ]),
    )
    let hidden = 0
    edited.getWorksheet('Register')?.eachRow((row) => {
      if (row.hidden) hidden += 1
    })
    expect(hidden).toBeGreaterThan(100)
    const rest = tallyOf(houses.filter((house) => house !== met))
    expect(countsOf(edited)).toEqual({
      rows: rest.tests - 2,
      passed: rest.firstMet + 1,
      'first test': rest.classes['first test'],
      // The repeat is gone; the test it replaced stays out until somebody clears the cell, and a line says so.
      repeat: rest.classes.repeat - 1,
      'in totals': rest.counting - 1,
      superseded: rest.superseded,
      'superseded by a deleted row': 1,
      duplicate: rest.classes.duplicate - 1,
      'earlier issue': rest.classes['earlier issue'],
      altered: rest.classes.altered,
      'not valid': rest.notValid,
      'to bill': rest.billable - 1,
      'still to be retested': rest.toRetest - 1,
    })
  }, 180_000)

  it('follows a correction month by month: together the months still come to the totals', async () => {
    const register = makeRegister(linesOf(houses), [], { asOf: about.asOf })
    const bytes = await writeRegisterWorkbook(register)
    const heads = headsOf(await load(bytes))
    const row = 6 + numberOf(register, missed)
    const edited = await load(
      await editInLibreOffice(bytes, tableOf(register, heads), [
        { do: 'set', row, column: heads.indexOf('Value') + 1, value: 0.3 },
        sort(heads),
      ]),
    )
    const [trends, totals] = [edited.getWorksheet('Trends'), edited.getWorksheet('Totals')]
    const meets = ['D5', 'D6', 'D7'].map((cell) => Number(trends?.getCell(cell).result))
    expect(meets).toEqual(
      register.trend.map(({ month, meets = 0 }) => meets + (month === about.month ? 1 : 0)),
    )
    for (const column of ['B', 'C', 'D', 'E']) {
      const months = [5, 6, 7].map((line) => Number(trends?.getCell(`${column}${line}`).result))
      expect(months.reduce((a, b) => a + b, 0)).toBe(totals?.getCell(`${column}5`).result)
    }
  }, 180_000)
})

function numberOf({ rows }: Register, house: InventedHouse, wanted?: string): number {
  const files = new Set(house.lines.map(({ file }) => file))
  const found = rows.find(({ file, role }) => files.has(file) && (wanted === undefined || role === wanted))
  if (!found) throw new Error('the house is not in the register')
  return found.row
}

const tableOf = ({ rows }: Register, heads: readonly string[]) => ({
  sheet: 'Register',
  heads: 6,
  lastRow: 6 + rows.length,
  lastColumn: heads.length,
})

async function load(content: Uint8Array): Promise<ExcelJS.Workbook> {
  const workbook = new ExcelJS.Workbook()
  await workbook.xlsx.load(content.slice().buffer)
  return workbook
}

function headsOf(workbook: ExcelJS.Workbook): string[] {
  const heads = workbook.getWorksheet('Register')?.getRow(6).values as string[] | undefined
  return (heads ?? []).slice(1).map((head) => head.replace(/\s+/g, ' '))
}

const NAMES = [
  'first test',
  'repeat',
  'in totals',
  'superseded',
  'superseded by a deleted row',
  'duplicate',
  'earlier issue',
  'altered',
  'not valid',
  'to bill',
  'still to be retested',
]

/** Counts as sheet Totals shows them. */
function countsOf(workbook: ExcelJS.Workbook): Record<string, unknown> {
  const totals = workbook.getWorksheet('Totals')
  const found = new Map<string, unknown>()
  totals?.eachRow((row) => {
    found.set(String(row.getCell(1).value), row.getCell(2).result ?? 0)
  })
  return {
    rows: totals?.getCell('B5').result,
    passed: totals?.getCell('I5').result,
    ...Object.fromEntries(NAMES.map((name) => [name, found.get(name)])),
  }
}
