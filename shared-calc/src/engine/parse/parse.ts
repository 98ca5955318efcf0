import { type MathNode, parse } from 'mathjs/number'

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

const operators = ['+', '-', '*', '/', '^', '.*', './', '.^'] as const
export type Operator = (typeof operators)[number]

interface RawNode extends MathNode {
  readonly op?: string
  readonly args?: readonly RawNode[]
  readonly content?: RawNode
  readonly value?: unknown
  readonly name?: string
  readonly fn?: RawNode | string
}

/**
 * Parses the text of an expression with mathjs and narrows its tree.
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

const isOperator = (op: unknown): op is Operator => (operators as readonly unknown[]).includes(op)

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
