import { compile, type Slot } from '../../../../shared-calc/src/engine/evaluate/compile.js'
import type { Expression } from '../../../../shared-calc/src/engine/index.js'
import { parseExpression } from '../../../../shared-calc/src/engine/parse/parse-with-mathjs.js'
import { COLUMNS, type Numbers, SCALARS } from './random-expressions'

const slots = new Map<string, Slot>([
  ...SCALARS.map((symbol, index) => [symbol, { index, rows: false }] as const),
  ...COLUMNS.map((symbol, index) => [symbol, { index, rows: true }] as const),
])

/** The value of an expression by the project's closures: a number, or one a row. */
export const ourValue = (expression: string, numbers: Numbers): number | number[] =>
  treeValue(parseExpression(expression), numbers)

export function treeValue(expression: Expression, numbers: Numbers): number | number[] {
  const { closure, rows } = compile(expression, slots)
  const columns = COLUMNS.map((symbol) => numbers[symbol])
  const frame = { scalars: SCALARS.map((symbol) => numbers[symbol]), columns, rows: numbers.u.length }
  return rows ? numbers.u.map((_, row) => closure(frame, row)) : closure(frame, 0)
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
