import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { parseExpression } from '../../../shared-calc/src/engine/parse/parse-with-mathjs.js'
import { chapters } from '../../../shared-calc/src/formulas/list.js'
import { evaluatedChapter } from './support/chapter-inputs'
import { ourValue, partsOf, treeValue } from './support/evaluate-expression'
import { mathjsValue } from './support/mathjs-oracle'
import { columnExpression, numbers, scalarExpression } from './support/random-expressions'

/** Equal, or apart by no more than rounding in the last places; NaN only where the other is. */
function agree(ours: number, theirs: number): boolean {
  if (Number.isNaN(ours) || Number.isNaN(theirs)) return Number.isNaN(ours) && Number.isNaN(theirs)
  return ours === theirs || Math.abs(ours - theirs) <= 1e-13 * Math.max(Math.abs(ours), Math.abs(theirs))
}

function expectSame(ours: number | number[], theirs: number | number[], what: string): void {
  const [a, b] = [[ours].flat(), [theirs].flat()]
  expect(a.length, what).toBe(b.length)
  a.forEach((value, i) => {
    expect(agree(value, b[i] ?? Number.NaN), `${what}: ${value} is not mathjs' ${b[i]}`).toBe(true)
  })
}

const allFinite = (value: number | number[]) => [value].flat().every(Number.isFinite)

describe('the closures', () => {
  it.each([
    ['one value', scalarExpression],
    ['one value a row', columnExpression],
  ])('give mathjs’ own value of any expression with %s', (_, expression) => {
    fc.assert(
      fc.property(expression, numbers, (text, values) => {
        // Roots of negative numbers are complex to mathjs, no number to us (below); powers of infinities differ too.
        fc.pre(partsOf(parseExpression(text)).every((part) => allFinite(treeValue(part, values))))
        expectSame(ourValue(text, values), mathjsValue(text, values), text)
      }),
      { numRuns: 1000 },
    )
  })

  it.each(['sqrt(-a)', 'log(-a)', '(-a)^0.5', '(-8)^(1/3)', '0/0*a'])(
    'have no number for %s',
    (expression) => {
      expect(ourValue(expression, { a: 2, b: 0, c: 0, u: [], v: [] })).toBeNaN()
    },
  )

  it.each([
    ['-a^2', -4],
    ['(-a)^2', 4],
    ['2^3^2', 512],
    ['2^-a', 0.25],
    ['-2^-a', -0.25],
    ['8/a/a', 2],
    ['8 - a - a', 4],
    ['a - -a', 4],
    ['-a^2*3', -12],
    ['6/a*3', 9],
  ])('work out %s as mathematics does, at a = 2', (expression, value) => {
    expect(ourValue(expression, { a: 2, b: 0, c: 0, u: [], v: [] })).toBe(value)
  })

  it.each(chapters.map(({ chapter }) => [chapter.title, chapter] as const))(
    'give mathjs’ own value of every formula of the chapter “%s”',
    (_, chapter) => {
      fc.assert(
        fc.property(evaluatedChapter(chapter), (block) => {
          const scope = Object.fromEntries(
            [...chapter.slots].map(([symbol, { rows }]) => [
              symbol,
              rows ? [...block.column(symbol)] : block.value(symbol),
            ]),
          )
          for (const step of chapter.steps)
            expectSame(scope[step.symbol] ?? Number.NaN, mathjsValue(step.expression, scope), step.symbol)
        }),
        { numRuns: 50 },
      )
    },
  )
})
