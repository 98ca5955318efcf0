import type { Expression } from '../parse/expression.js'
import { symbolParts } from '../parse/symbols.js'

const entities: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&apos;',
}

/** Text made safe for XML content and attribute values. */
const escapeXml = (text: string): string => text.replace(/[&<>"']/g, (mark) => entities[mark] ?? mark)

/** The expression as presentation MathML, a `<math>` element. Source: W3C MathML Core. */
export function toMathml(symbol: string, expression: Expression): string {
  return `<math xmlns="http://www.w3.org/1998/Math/MathML"><mrow>${identifier(symbol)}<mo>=</mo>${row(expression)}</mrow></math>`
}

const signs: Readonly<Record<string, string>> = { '*': '·', '.*': '·', '-': '−' }

function row(expression: Expression): string {
  switch (expression.kind) {
    case 'number':
      return `<mn>${expression.value}</mn>`
    case 'symbol':
      return identifier(expression.symbol)
    case 'brackets':
      return `<mrow><mo>(</mo>${row(expression.of)}<mo>)</mo></mrow>`
    case 'negative':
      return `<mrow><mo>−</mo>${row(expression.of)}</mrow>`
    case 'operator':
      return operation(expression)
    case 'call':
      return call(expression.name, expression.args)
  }
}

function operation({ operator, left, right }: Extract<Expression, { kind: 'operator' }>): string {
  if (operator === '/' || operator === './') return `<mfrac>${group(bare(left))}${group(bare(right))}</mfrac>`
  if (operator === '^' || operator === '.^') return `<msup>${group(left)}${group(bare(right))}</msup>`
  return `<mrow>${row(left)}<mo>${signs[operator] ?? operator}</mo>${row(right)}</mrow>`
}

function call(name: string, args: readonly Expression[]): string {
  const [first] = args
  if (!first) return ''
  if (name === 'sqrt') return `<msqrt>${row(bare(first))}</msqrt>`
  if (name === 'exp') return `<msup><mi>e</mi>${group(bare(first))}</msup>`
  if (name === 'abs') return `<mrow><mo>|</mo>${row(bare(first))}<mo>|</mo></mrow>`
  if (name === 'sum') return `<mrow><mo>∑</mo>${row(first)}</mrow>`
  const shown = name === 'log' ? 'ln' : name === 'student_t' ? 't' : name.replace('_', ' ')
  const list = args.map(row).join('<mo>;</mo>')
  return `<mrow><mi>${escapeXml(shown)}</mi><mo>(</mo>${list}<mo>)</mo></mrow>`
}

/** Brackets that a fraction bar, a root or an exponent makes unnecessary. */
const bare = (expression: Expression): Expression =>
  expression.kind === 'brackets' ? expression.of : expression

const group = (expression: Expression): string => `<mrow>${row(expression)}</mrow>`

function identifier(symbol: string): string {
  const { base, subscript } = symbolParts(symbol)
  const head = `<mi>${escapeXml(base)}</mi>`
  return subscript === undefined ? head : `<msub>${head}<mi>${escapeXml(subscript)}</mi></msub>`
}
