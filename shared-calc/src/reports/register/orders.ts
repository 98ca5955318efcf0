import { InputError, type Problem } from '../../contract/problem.js'
import { addressOf, withSheet } from '../../log/grid/address.js'
import type { Cell, Sheet } from '../../log/grid/grid.js'
import { openNamed } from './open-named.js'
import type { TestLine } from './test-line.js'

/** What the office knows of a test and the tester does not: its order and its fee. */
export interface Order {
  readonly testNumber: string
  readonly orderNumber?: string
  /** In the office's own currency. */
  readonly fee?: number
}

/** The headings that a list of orders is read by, in any order and case; other columns are passed over. */
const HEADINGS = { testNumber: 'test number', orderNumber: 'order number', fee: 'fee' } as const
const FEE = /^\d{1,9}(?:[.,]\d{1,2})?$/

/**
 * Orders and fees from a list (.csv, .xlsx, .ods) with the headings "test number", "order number", "fee" in one row of its first
 * sheet. @throws InputError naming each cell that cannot be read, and test numbers that are there twice
 */
export function readOrders(bytes: Uint8Array, file: string): Order[] {
  const grid = openNamed(bytes, file)
  const [name = ''] = grid.sheetNames
  const sheet = grid.sheet(name)
  const head = sheet && headOf(sheet)
  if (!sheet || !head)
    throw new InputError([
      {
        path: file,
        message:
          'the list needs a row of headings: "test number", and "order number" or "fee" or both. Write them above the columns',
      },
    ])
  const problems: Problem[] = []
  const orders = new Map<string, Order>()
  for (let row = head.row + 1; row < sheet.rows; row += 1) {
    const at = (column: number | undefined) => (column === undefined ? undefined : sheet.at(row, column))
    const number = textOf(at(head.testNumber))
    const order = textOf(at(head.orderNumber))
    const fee = feeOf(at(head.fee))
    const fault = (column: number | undefined, message: string) =>
      problems.push({ path: file, cell: withSheet(name, addressOf(row, column ?? 0)), message })
    if (number === '') {
      if (order !== '' || fee !== undefined) fault(head.testNumber, 'the test number is missing')
      continue
    }
    if (orders.has(number)) fault(head.testNumber, `the test number ${number} is in the list twice`)
    if (Number.isNaN(fee))
      fault(head.fee, `"${textOf(at(head.fee))}" is not a fee: write it as 250 or 250.50`)
    orders.set(number, {
      testNumber: number,
      ...(order !== '' && { orderNumber: order }),
      ...(fee !== undefined && { fee }),
    })
  }
  if (problems.length > 0) throw new InputError(problems)
  return [...orders.values()]
}

function headOf(sheet: Sheet) {
  for (let row = 0; row < Math.min(sheet.rows, 50); row += 1) {
    const found = new Map<string, number>()
    for (let column = 0; column < sheet.columns; column += 1)
      found.set(textOf(sheet.at(row, column)).toLowerCase(), column)
    const [testNumber, orderNumber, fee] = Object.values(HEADINGS).map((heading) => found.get(heading))
    if (testNumber !== undefined && (orderNumber !== undefined || fee !== undefined))
      return { row, testNumber, orderNumber, fee }
  }
  return undefined
}

const textOf = (cell: Cell | undefined): string =>
  String(cell?.value ?? '')
    .trim()
    .replace(/\s+/g, ' ')

/** NaN where there is something that is no fee; undefined where there is nothing. */
function feeOf(cell: Cell | undefined): number | undefined {
  const text = textOf(cell)
  if (text === '') return undefined
  if (cell?.kind === 'number') return Number(cell.value) >= 0 ? Number(cell.value) : Number.NaN
  return FEE.test(text) ? Number(text.replace(',', '.')) : Number.NaN
}

/** The tests with their orders, and the orders whose test is not among them. */
export function withOrders(
  lines: readonly TestLine[],
  orders: readonly Order[],
): { readonly lines: TestLine[]; readonly unknown: string[] } {
  const byNumber = new Map(orders.map((order) => [order.testNumber, order]))
  const tests = new Set(lines.map(({ testNumber }) => testNumber))
  return {
    lines: lines.map((line) => {
      const order = line.testNumber === undefined ? undefined : byNumber.get(line.testNumber)
      if (!order) return line
      const { testNumber: _, ...known } = order
      return { ...line, ...known }
    }),
    unknown: orders.filter(({ testNumber }) => !tests.has(testNumber)).map(({ testNumber }) => testNumber),
  }
}
