/** A fault in a formula's definition: found when the program loads, never caused by a user's input. */
export class FormulaError extends Error {
  override readonly name = 'FormulaError'
}

/** The few kinds of node an expression may hold; everything else is refused when a chapter is defined. */
export type Expression =
  | { readonly kind: 'number'; readonly value: number }
  | { readonly kind: 'symbol'; readonly symbol: string }
  | {
      readonly kind: 'operator'
      readonly operator: Operator
      readonly left: Expression
      readonly right: Expression
    }
  | { readonly kind: 'negative'; readonly of: Expression }
  | { readonly kind: 'call'; readonly name: string; readonly args: readonly Expression[] }
  | { readonly kind: 'brackets'; readonly of: Expression }

export const operators = ['+', '-', '*', '/', '^', '.*', './', '.^'] as const
export type Operator = (typeof operators)[number]

/** Every symbol an expression refers to, once each, in order of appearance. */
export function symbolsOf(expression: Expression, found = new Set<string>()): Set<string> {
  switch (expression.kind) {
    case 'symbol':
      found.add(expression.symbol)
      break
    case 'operator':
      symbolsOf(expression.left, found)
      symbolsOf(expression.right, found)
      break
    case 'negative':
    case 'brackets':
      symbolsOf(expression.of, found)
      break
    case 'call':
      for (const arg of expression.args) symbolsOf(arg, found)
  }
  return found
}

/** An expression as short as JSON can hold it: a number, a symbol, or a list led by an operator, `()`, `-` or a function. */
export type Packed = number | string | readonly [string, ...Packed[]]

/** @see unpack */
export function pack(expression: Expression): Packed {
  switch (expression.kind) {
    case 'number':
      return expression.value
    case 'symbol':
      return expression.symbol
    case 'operator':
      return [expression.operator, pack(expression.left), pack(expression.right)]
    case 'negative':
      return ['-', pack(expression.of)]
    case 'brackets':
      return ['()', pack(expression.of)]
    case 'call':
      return [expression.name, ...expression.args.map(pack)]
  }
}

/** The expression that {@link pack} made short. */
export function unpack(packed: Packed): Expression {
  if (typeof packed === 'number') return { kind: 'number', value: packed }
  if (typeof packed === 'string') return { kind: 'symbol', symbol: packed }
  const [name, ...parts] = packed
  const args = parts.map(unpack)
  const [first, second] = args
  if (first && name === '()') return { kind: 'brackets', of: first }
  if (first && !second && name === '-') return { kind: 'negative', of: first }
  if (first && second && isOperator(name))
    return { kind: 'operator', operator: name, left: first, right: second }
  return { kind: 'call', name, args }
}

export const isOperator = (op: unknown): op is Operator => (operators as readonly unknown[]).includes(op)
