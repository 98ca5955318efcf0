import { mkdir, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { parseRecord, type TestRecord } from '@draughtbook/shared-calc'
import {
  makeRegister,
  readLines,
  readOrders,
  registerCsv,
  withOrders,
  writeRegisterWorkbook,
} from '@draughtbook/shared-calc/register'
import { writeSummaryWorkbook } from '@draughtbook/shared-calc/workbook'
import ExcelJS from 'exceljs'
import { format } from 'numfmt'
import { beforeAll, describe, expect, it } from 'vitest'
import { inventedRecord } from '../archive/invented-record'
import { commandLine, folder } from '../service/support/command-line'
import { compareCached } from '../support/formula-cells'

const text = (lines: readonly string[]) => new TextEncoder().encode(lines.join('\n'))
const LIST = text([
  'Order number;Test number;Fee;Remark',
  'O-1;T-1;250,50;',
  'O-2;T-2;300;passed on',
  ';T-3;99,99;',
  'O-4;T-4;;',
  'O-9;T-9;10;no such test',
])

const about = { asOf: '2026-10-31' }
const clients = ['Sample Builder (invented)', 'Example Homes (invented)']

/** Five tests of two clients; the third is not valid, so it is not billed. */
async function lines() {
  const found = []
  for (let i = 1; i <= 5; i += 1) {
    const invented = inventedRecord(i, {
      id: `T-${i}`,
      plot: `Plot ${i}`,
      n50: 0.4,
      ...(clients[i % 2] !== undefined && { client: clients[i % 2] as string }),
    })
    const [line] = readLines(await writeSummaryWorkbook(invented), `${i}.xlsx`).lines
    if (!line) throw new Error('no line')
    found.push(i === 3 ? { ...line, outcome: 'not valid' as const, findings: [INVALID] } : line)
  }
  return found
}
const INVALID = { rule: 'zero-flow-limit', severity: 'invalidates', message: 'too windy' } as const

describe('a list of orders', () => {
  it('is read by its headings, in any order, from separated text and from a workbook', async () => {
    const expected = [
      { testNumber: 'T-1', orderNumber: 'O-1', fee: 250.5 },
      { testNumber: 'T-2', orderNumber: 'O-2', fee: 300 },
      { testNumber: 'T-3', fee: 99.99 },
      { testNumber: 'T-4', orderNumber: 'O-4' },
      { testNumber: 'T-9', orderNumber: 'O-9', fee: 10 },
    ]
    expect(readOrders(LIST, 'orders.csv')).toEqual(expected)
    const workbook = new ExcelJS.Workbook()
    const sheet = workbook.addWorksheet('Orders')
    sheet.addRow(['List of the office (invented)'])
    sheet.addRow(['Test number', 'Fee', 'Order number'])
    for (const { testNumber, fee, orderNumber } of expected) sheet.addRow([testNumber, fee, orderNumber])
    expect(readOrders(new Uint8Array(await workbook.xlsx.writeBuffer()), 'orders.xlsx')).toEqual(expected)
  })

  it.each([
    ['a fee that is none', ['test number,fee', 'T-1,by agreement'], /B2.*"by agreement" is not a fee/],
    ['a number twice', ['test number,fee', 'T-1,1', 'T-1,2'], /A3.*T-1 is in the list twice/],
    ['no number', ['test number,fee', ',5'], /A2.*the test number is missing/],
    ['no headings', ['a,b', '1,2'], /needs a row of headings/],
  ])('says which cell cannot be read: %s', (_, list, message) => {
    expect(() => readOrders(text(list), 'orders.csv')).toThrow(message)
  })
})

describe('the register with orders', () => {
  let tests: Awaited<ReturnType<typeof lines>>
  beforeAll(async () => {
    tests = await lines()
  })

  it('adds up the fees of tests to bill, for all and for each client, and says which have none', () => {
    const { lines: known, unknown } = withOrders(tests, readOrders(LIST, 'orders.csv'))
    const { overall, totals } = makeRegister(known, [], about)
    // By hand: T-1 250.50 and T-2 300; T-3 is not valid; T-4 and T-5 have no fee.
    expect(overall).toMatchObject({ fees: 550.5, withoutFee: 2, billable: 4 })
    const fees = Object.fromEntries(totals.client.map(({ group, fees: sum }) => [group, sum]))
    expect(fees).toEqual({ 'Example Homes (invented)': 250.5, 'Sample Builder (invented)': 300 })
    expect(unknown).toEqual(['T-9'])
    expect(makeRegister(tests, [], about).overall.fees).toBeUndefined()
  })

  it('has them on the sheets as live formulas that LibreOffice works out alike, and in CSV', async () => {
    const register = makeRegister(withOrders(tests, readOrders(LIST, 'orders.csv')).lines, [], about)
    const bytes = await writeRegisterWorkbook(register)
    expect(await compareCached(bytes, { relative: 1e-9, absolute: 1e-9 })).toEqual([])
    const workbook = new ExcelJS.Workbook()
    await workbook.xlsx.load(bytes as never)
    const shown: unknown[] = []
    workbook.getWorksheet('Totals')?.eachRow((row) => row.eachCell(({ result }) => shown.push(result)))
    expect(shown).toContain(550.5)
    expect(await registerCsv(register)).toMatch(/T-1,O-1,250\.5,/)
  }, 120_000)

  it('is written by the command, which names orders without a test', async () => {
    const root = await folder()
    await mkdir(join(root, 'month'))
    const record = inventedRecord(1, { id: 'T-1' })
    await writeFile(join(root, 'month', '1.xlsx'), await writeSummaryWorkbook(record))
    await writeFile(join(root, 'orders.csv'), LIST)
    const out = join(root, 'register.xlsx')
    const orders = join(root, 'orders.csv')
    const found = await commandLine('register', join(root, 'month'), '--out', out, '--orders', orders)
    expect(found.code).toBe(0)
    expect(found.out).toMatch(/250\.50 in fees; every test to bill has a fee/)
    expect(found.err.join('\n')).toMatch(/no test in these files has the number T-9/)
    await writeFile(orders, text(['test number,fee', 'T-1,free']))
    const refused = await commandLine('register', join(root, 'month'), '--out', out, '--orders', orders)
    expect(refused.code).toBe(2)
    expect(refused.err.join('\n')).toMatch(/"free" is not a fee/)
  })
})

describe('the register', () => {
  it('shows value, limit and margin with digits that do not contradict the verdict', async () => {
    const [line] = readLines(await writeSummaryWorkbook(inventedRecord(1)), 'a.xlsx').lines
    if (!line) throw new Error('no line')
    const near = [0.6003, 0.59998, 0.6000004].map((value, i) => ({
      ...line,
      building: `Plot ${i}`,
      testNumber: `N-${i}`,
      readingsDigest: `${i}`,
      recordDigest: `${i}`,
      outcome: (value > 0.6 ? 'misses' : 'meets') as 'misses' | 'meets',
      judged: { quantity: 'n50', label: 'own', value, limit: 0.6, unit: '1/h', margin: 0.6 - value },
    }))
    const workbook = new ExcelJS.Workbook()
    await workbook.xlsx.load((await writeRegisterWorkbook(makeRegister(near, [], about))) as never)
    const sheet = workbook.getWorksheet('Register')
    const heads = (sheet?.getRow(6).values ?? []) as string[]
    const at = (row: number, head: string) => {
      const cell = sheet?.getRow(row).getCell(heads.indexOf(head))
      return Number(format(cell?.numFmt ?? '', Number(cell?.result ?? cell?.value)))
    }
    for (const row of [7, 8, 9]) {
      const misses = near[row - 7]?.outcome === 'misses'
      expect(at(row, 'Value') > at(row, 'Limit')).toBe(misses)
      expect(at(row, 'Margin') < 0).toBe(misses)
      expect(at(row, 'Margin')).not.toBe(0)
    }
  })

  it('draws charts for each quantity that tests were judged by', async () => {
    const judgedBy = (seed: number, target: object): TestRecord =>
      parseRecord({ ...inventedRecord(seed), target })
    const records = [
      judgedBy(1, { quantity: 'n50', limit: 0.6, referencePressure_Pa: 50, directions: 'mean' }),
      judgedBy(2, { quantity: 'n50', limit: 0.6, referencePressure_Pa: 50, directions: 'mean' }),
      judgedBy(3, { quantity: 'qE50', limit: 0.8, referencePressure_Pa: 50, directions: 'mean' }),
    ]
    const found = []
    for (const [i, record] of records.entries())
      found.push(...readLines(await writeSummaryWorkbook(record), `${i}.xlsx`).lines)
    const bytes = await writeRegisterWorkbook(makeRegister(found, [], about))
    const workbook = new ExcelJS.Workbook()
    await workbook.xlsx.load(bytes as never)
    expect(workbook.getWorksheet('Charts')?.getCell('A1').value).toBe('n50 of the tests')
    expect(workbook.getWorksheet('Charts 2')?.getCell('A1').value).toBe('qE50 of the tests')
    expect(await compareCached(bytes, { relative: 1e-9, absolute: 1e-9 })).toEqual([])
  }, 120_000)
})
