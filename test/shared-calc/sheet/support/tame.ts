import type { Expression } from '../../../../shared-calc/src/engine/index.js'
import { parseExpression } from '../../../../shared-calc/src/engine/parse/parse-with-mathjs.js'
import { partsOf, treeValue } from './evaluate-expression'
import type { Numbers } from './random-expressions'

/**
 * Whether an expression can be compared between two machines of double precision to nine digits: no part of it is
 * infinite or complex, huge or tiny, a difference of nearly equal numbers, or a power that blows rounding up.
 * LibreOffice takes odd roots of negative numbers, which are no numbers here: bases to a broken power are positive.
 */
export const tame = (expression: string, numbers: Numbers): boolean =>
  partsOf(parseExpression(expression)).every((part) => calm(part, numbers))

function calm(part: Expression, numbers: Numbers): boolean {
  const of = (expression: Expression) => [treeValue(expression, numbers)].flat()
  const values = of(part)
  if (!values.every((value) => Number.isFinite(value) && Math.abs(value) < 1e100)) return false
  if (!values.every((value) => value === 0 || Math.abs(value) > 1e-100)) return false
  if (part.kind === 'call' && part.name === 'exp')
    return of(part.args[0] ?? part).every((value) => Math.abs(value) < 50)
  // A logarithm near 1, like a difference, loses what its argument was rounded by.
  if (part.kind === 'call' && part.name === 'log') return values.every((value) => Math.abs(value) > 1e-5)
  if (part.kind === 'call' && part.name === 'sum') return calmSum(of(part), of(part.args[0] ?? part))
  if (part.kind !== 'operator') return true
  const [left, right] = [of(part.left), of(part.right)]
  const pick = (side: number[], row: number) => side[side.length === 1 ? 0 : row] ?? Number.NaN
  return values.every((value, row) => {
    const [l, r] = [pick(left, row), pick(right, row)]
    if (part.operator === '+' || part.operator === '-')
      return Math.abs(value) > 1e-5 * Math.max(Math.abs(l), Math.abs(r))
    if (part.operator.endsWith('^')) return l !== 0 && Math.abs(r) < 50 && (l > 0 || Number.isInteger(r))
    return true
  })
}

const calmSum = ([total = 0]: number[], terms: number[]): boolean =>
  Math.abs(total) > 1e-5 * Math.max(...terms.map(Math.abs))
