import type { Expression } from '../../../../shared-calc/src/engine/index.js'
import { isColumn, type Slot } from '../../../../shared-calc/src/engine/parse/columns.js'
import { parseExpression } from '../../../../shared-calc/src/engine/parse/parse-with-mathjs.js'
import { COLUMNS, type Numbers, SCALARS } from './random-expressions'
import { runOf } from './run-script'

const quantity = (symbol: string) => ({ symbol, name: symbol, unit: '1' })
const inputs = [...SCALARS.map(quantity), ...COLUMNS.map((symbol) => ({ ...quantity(symbol), rows: true }))]
const places = new Map<string, Slot>([
  ...SCALARS.map((symbol, index) => [symbol, { index, rows: false }] as const),
  ...COLUMNS.map((symbol, index) => [symbol, { index, rows: true }] as const),
])

/** The value of an expression by the script that is written from it: a number, or one a row. */
export const ourValue = (expression: string, numbers: Numbers): number | number[] =>
  treeValue(parseExpression(expression), numbers)

export function treeValue(tree: Expression, numbers: Numbers): number | number[] {
  const rows = isColumn(tree, places)
  const index = rows ? COLUMNS.length : SCALARS.length
  const step = {
    ...quantity('value'),
    expression: '',
    source: { text: 'test', seen: 'definition' } as const,
    tree,
    uses: new Set<string>(),
    rows,
  }
  const slots = new Map([...places, ['value', { index, rows }] as const])
  const scalars = SCALARS.map((symbol) => numbers[symbol])
  const columns: (readonly number[])[] = COLUMNS.map((symbol) => numbers[symbol])
  runOf({ constants: [], inputs, steps: [step], slots })(scalars, columns, numbers.u.length)
  return rows ? [...(columns[index] ?? [])] : (scalars[index] ?? Number.NaN)
}

/** An expression and every part of it that has a value of its own; inside a sum, the terms. */
export function partsOf(expression: Expression): Expression[] {
  switch (expression.kind) {
    case 'operator':
      return [expression, ...partsOf(expression.left), ...partsOf(expression.right)]
    case 'negative':
    case 'brackets':
      return [expression, ...partsOf(expression.of)]
    case 'call':
      return [expression, ...expression.args.flatMap(partsOf)]
    default:
      return [expression]
  }
}
