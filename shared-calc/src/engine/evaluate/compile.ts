import { type Expression, FormulaError, type Operator } from '../parse/expression.js'
import { columnFunctions, scalarFunctions } from './functions.js'

/** The numbers a chapter works on: one slot per scalar, one array per column. */
export interface Frame {
  readonly scalars: number[]
  readonly columns: (readonly number[])[]
  readonly rows: number
}

/** Value of an expression in a frame; the row counts only where the expression is a column. */
export type Closure = (frame: Frame, row: number) => number

export interface Slot {
  readonly index: number
  readonly rows: boolean
}

export interface Compiled {
  readonly closure: Closure
  /** Whether the value is a column, one number a row. */
  readonly rows: boolean
}

/**
 * Turns an expression into closures over a frame: no text is evaluated at run time, so no `eval` is needed.
 * Scalar operators between columns are refused, as mathjs would read them as matrix operations.
 * @throws FormulaError for a misuse of columns or an unknown function
 */
export function compile(expression: Expression, slots: ReadonlyMap<string, Slot>): Compiled {
  switch (expression.kind) {
    case 'number': {
      const { value } = expression
      return { closure: () => value, rows: false }
    }
    case 'symbol':
      return symbol(expression.symbol, slots)
    case 'brackets':
      return compile(expression.of, slots)
    case 'negative': {
      const { closure, rows } = compile(expression.of, slots)
      return { closure: (frame, row) => -closure(frame, row), rows }
    }
    case 'operator':
      return operation(expression.operator, compile(expression.left, slots), compile(expression.right, slots))
    case 'call':
      return call(expression.name, expression.args, slots)
  }
}

function symbol(name: string, slots: ReadonlyMap<string, Slot>): Compiled {
  const slot = slots.get(name)
  if (!slot) throw new FormulaError(`unknown symbol ${name}`)
  const { index, rows } = slot
  return rows
    ? { closure: (frame, row) => (frame.columns[index] as readonly number[])[row] as number, rows }
    : { closure: (frame) => frame.scalars[index] as number, rows }
}

function operation(operator: Operator, left: Compiled, right: Compiled): Compiled {
  const rows = left.rows || right.rows
  const a = left.closure
  const b = right.closure
  const elementwise = operator.startsWith('.')
  const needsDot =
    (operator === '*' && left.rows && right.rows) ||
    (operator === '/' && right.rows) ||
    (operator === '^' && rows)
  if (needsDot) throw new FormulaError(`operator ${operator} between columns: write .${operator}`)
  switch (elementwise ? operator.slice(1) : operator) {
    case '+':
      return { closure: (frame, row) => a(frame, row) + b(frame, row), rows }
    case '-':
      return { closure: (frame, row) => a(frame, row) - b(frame, row), rows }
    case '*':
      return { closure: (frame, row) => a(frame, row) * b(frame, row), rows }
    case '/':
      return { closure: (frame, row) => a(frame, row) / b(frame, row), rows }
    default:
      return { closure: (frame, row) => a(frame, row) ** b(frame, row), rows }
  }
}

function call(name: string, args: readonly Expression[], slots: ReadonlyMap<string, Slot>): Compiled {
  const compiled = args.map((arg) => compile(arg, slots))
  const [first, second] = compiled
  if (name === 'sum' && first?.rows && !second) return { closure: summed(first.closure), rows: false }
  const column = columnFunctions[name]
  if (column && first?.rows && !second && args[0]?.kind === 'symbol') {
    const slot = slots.get(args[0].symbol)?.index ?? 0
    return { closure: (frame) => column.evaluate(frame.columns[slot] as readonly number[]), rows: false }
  }
  const scalar = scalarFunctions[name]
  if (!scalar || !first)
    throw new FormulaError(`function ${name} is unknown, or its arguments are not of its kind`)
  const rows = compiled.some((arg) => arg.rows)
  const a = first.closure
  const { evaluate } = scalar
  if (!second) return { closure: (frame, row) => evaluate(a(frame, row)), rows }
  const b = second.closure
  return { closure: (frame, row) => evaluate(a(frame, row), b(frame, row)), rows }
}

function summed(term: Closure): Closure {
  return (frame) => {
    let sum = 0
    for (let row = 0; row < frame.rows; row += 1) sum += term(frame, row)
    return sum
  }
}
