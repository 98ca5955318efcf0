import { columnFunctions, scalarFunctions } from '../evaluate/functions.js'
import { type Expression, FormulaError } from './expression.js'

/** Where a symbol stands among the numbers of a chapter: its place among the scalars, or among the columns. */
export interface Slot {
  readonly index: number
  readonly rows: boolean
}

export type Slots = ReadonlyMap<string, Slot>

/**
 * Whether an expression gives a column, one value a row.
 * Scalar operators between columns are refused, as mathjs would read them as matrix operations.
 * @throws FormulaError for a misuse of columns, an unknown symbol or an unknown function
 */
export function isColumn(expression: Expression, slots: Slots): boolean {
  switch (expression.kind) {
    case 'number':
      return false
    case 'symbol': {
      const slot = slots.get(expression.symbol)
      if (!slot) throw new FormulaError(`unknown symbol ${expression.symbol}`)
      return slot.rows
    }
    case 'brackets':
    case 'negative':
      return isColumn(expression.of, slots)
    case 'operator': {
      const { operator } = expression
      const [left, right] = [isColumn(expression.left, slots), isColumn(expression.right, slots)]
      const needsDot =
        (operator === '*' && left && right) ||
        (operator === '/' && right) ||
        (operator === '^' && (left || right))
      if (needsDot) throw new FormulaError(`operator ${operator} between columns: write .${operator}`)
      return left || right
    }
    case 'call':
      return givesColumn(expression.name, expression.args, slots)
  }
}

function givesColumn(name: string, args: readonly Expression[], slots: Slots): boolean {
  const columns = args.map((arg) => isColumn(arg, slots))
  if (gathers(name, args, columns)) return false
  if (!scalarFunctions[name] || args.length === 0)
    throw new FormulaError(`function ${name} is unknown, or its arguments are not of its kind`)
  return columns.includes(true)
}

/** Whether a function makes one number of a whole column: a sum of any expression, the others of a symbol. */
const gathers = (name: string, args: readonly Expression[], columns: readonly boolean[]): boolean =>
  args.length === 1 &&
  columns[0] === true &&
  (name === 'sum' || (columnFunctions[name] !== undefined && args[0]?.kind === 'symbol'))

/** The same of an expression whose columns have been found right. */
export const gathersColumn = (name: string, args: readonly Expression[], slots: Slots): boolean =>
  gathers(
    name,
    args,
    args.map((arg) => isColumn(arg, slots)),
  )
