import { columnFunctions, scalarFunctions } from '../evaluate/functions.js'
import type { Expression } from '../parse/expression.js'

/** Where each symbol is in a workbook. */
export interface SheetPlaces {
  /** Address of a scalar, or of a column's cell in the row that is being written. */
  readonly cell: (symbol: string) => string
  /** Range of a whole column; undefined for a scalar. */
  readonly range: (symbol: string) => string | undefined
}

/**
 * The expression as a spreadsheet formula, without the leading equals sign.
 * Every operator is bracketed: in spreadsheets -x^2 is +x², in mathematics it is not.
 */
export function toSheet(expression: Expression, places: SheetPlaces): string {
  return render(expression, places.cell, places)
}

function render(expression: Expression, place: (symbol: string) => string, places: SheetPlaces): string {
  const inner = (part: Expression) => render(part, place, places)
  switch (expression.kind) {
    case 'number':
      return String(expression.value).replace('e', 'E')
    case 'symbol':
      return place(expression.symbol)
    case 'brackets':
      return inner(expression.of)
    case 'negative':
      return `(0-${inner(expression.of)})`
    case 'operator':
      return `(${inner(expression.left)}${expression.operator.replace('.', '')}${inner(expression.right)})`
    case 'call':
      return renderCall(expression.name, expression.args, inner, places)
  }
}

function renderCall(
  name: string,
  args: readonly Expression[],
  inner: (part: Expression) => string,
  places: SheetPlaces,
): string {
  const [first] = args
  const whole = (symbol: string) => places.range(symbol) ?? places.cell(symbol)
  if (name === 'sum' && first)
    return first.kind === 'symbol'
      ? `SUM(${whole(first.symbol)})`
      : `SUMPRODUCT(${render(first, whole, places)})`
  const column = columnFunctions[name]
  if (column && args.length === 1 && first?.kind === 'symbol') return column.sheet(whole(first.symbol))
  const scalar = scalarFunctions[name]
  if (!scalar) throw new RangeError(`function ${name} has no spreadsheet form`)
  return scalar.sheet(...args.map(inner))
}
