import { type MathNode, parse } from 'mathjs/number'
import { type Expression, isOperator } from './expression.js'

interface RawNode extends MathNode {
  readonly op?: string
  readonly args?: readonly RawNode[]
  readonly content?: RawNode
  readonly value?: unknown
  readonly name?: string
  readonly fn?: RawNode | string
}

/**
 * Parses the text of an expression with mathjs and narrows its tree. Only the generator of the parsed formulas and the
 * tests load this: mathjs takes a third of a second to start.
 * @throws SyntaxError naming the expression and what it may not hold
 */
export function parseExpression(text: string): Expression {
  return narrow(parse(text) as RawNode, text)
}

function narrow(node: RawNode, text: string): Expression {
  const [first, second] = node.args ?? []
  switch (node.type) {
    case 'ConstantNode':
      if (typeof node.value === 'number' && Number.isFinite(node.value))
        return { kind: 'number', value: node.value }
      break
    case 'SymbolNode':
      return { kind: 'symbol', symbol: node.name ?? '' }
    case 'ParenthesisNode':
      if (node.content) return { kind: 'brackets', of: narrow(node.content, text) }
      break
    case 'OperatorNode':
      if (first && second && isOperator(node.op))
        return { kind: 'operator', operator: node.op, left: narrow(first, text), right: narrow(second, text) }
      if (first && !second && node.op === '-') return { kind: 'negative', of: narrow(first, text) }
      break
    case 'FunctionNode': {
      const name = typeof node.fn === 'string' ? node.fn : node.fn?.name
      if (name) return { kind: 'call', name, args: (node.args ?? []).map((arg) => narrow(arg, text)) }
    }
  }
  throw new SyntaxError(
    `expression "${text}" holds ${node.type} ${node.op ?? ''}, which formulas may not use`,
  )
}
