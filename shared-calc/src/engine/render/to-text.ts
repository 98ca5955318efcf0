import type { Expression } from '../parse/expression.js'
import { symbolText } from '../parse/symbols.js'

const names: Readonly<Record<string, string>> = { log: 'ln', sum: 'Σ', sqrt: '√', student_t: 't' }
const operators: Readonly<Record<string, string>> = { '*': '·', '.*': '·', './': '/', '-': '−', '.^': '^' }

/**
 * The expression in one line of readable text.
 * @param put - text to stand for a symbol (its number, say); default the symbol itself
 */
export function toText(expression: Expression, put: (symbol: string) => string = symbolText): string {
  const inner = (part: Expression) => toText(part, put)
  switch (expression.kind) {
    case 'number':
      return String(expression.value)
    case 'symbol':
      return put(expression.symbol)
    case 'brackets':
      return `(${inner(expression.of)})`
    case 'negative':
      return `−${inner(expression.of)}`
    case 'operator': {
      const { operator } = expression
      const sign = operators[operator] ?? operator
      const gap = operator === '+' || operator === '-' ? ' ' : ''
      return `${inner(expression.left)}${gap}${sign}${gap}${inner(expression.right)}`
    }
    case 'call':
      return `${names[expression.name] ?? expression.name}(${expression.args.map(inner).join('; ')})`
  }
}

/** A number for the working: six significant digits, brackets round a negative one. */
export function numberText(value: number): string {
  const text = String(Number(value.toPrecision(6))).replace('-', '−')
  return value < 0 ? `(${text})` : text
}
