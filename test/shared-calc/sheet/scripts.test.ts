import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { constants } from '../../../shared-calc/src/catalogue/constants.js'
import { Calculation, chapterOf, type Script } from '../../../shared-calc/src/engine/index.js'
import { parseExpression } from '../../../shared-calc/src/engine/parse/parse-with-mathjs.js'
import { standardAtmosphere } from '../../../shared-calc/src/formulas/air.js'
import { chapters } from '../../../shared-calc/src/formulas/list.js'
import { evaluatedChapter } from './support/chapter-inputs'
import { ourValue, partsOf, treeValue } from './support/evaluate-expression'
import { mathjsValue } from './support/mathjs-oracle'
import { columnExpression, numbers, scalarExpression } from './support/random-expressions'
import { scriptOf } from './support/run-script'

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

describe('the scripts', () => {
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

  it.each(chapters.map(({ chapter }) => [chapter.title, chapter] as const))(
    'give the same without some inputs of the chapter “%s”, as far as those are not needed',
    (_, chapter) => {
      fc.assert(
        fc.property(evaluatedChapter(chapter), fc.nat(chapter.inputs.length - 1), (whole, left) => {
          const kept = chapter.inputs.map((_, i) => (i === left ? undefined : whole.inputs[i]))
          const part = new Calculation().addInputs('part', chapter.title, chapter, kept)
          const missing = chapter.inputs[left]?.symbol ?? ''
          expect(part.has(missing)).toBe(false)
          for (const { symbol, rows, uses } of part.chapter.steps) {
            expect([...uses].every((used) => part.has(used))).toBe(true)
            if (rows) expect(part.column(symbol)).toEqual(whole.column(symbol))
            else expect(part.value(symbol)).toBe(whole.value(symbol))
          }
          expect(part.isFinite()).toBe(
            part.chapter.steps.every(({ symbol, rows }) =>
              (rows ? [...part.column(symbol)] : [part.value(symbol)]).every(Number.isFinite),
            ),
          )
        }),
        { numRuns: 20 },
      )
    },
  )

  it('are refused where the formulas are no longer those they were written from', () => {
    const { definition } = standardAtmosphere
    const script = scriptOf(definition)
    const built = (changed: Partial<Script>, formulas = definition.formulas) =>
      chapterOf({ ...definition, formulas }, constants, parseExpression, () => ({ ...script, ...changed }))
        .steps
    expect(built({})).toHaveLength(definition.formulas.length)
    const fault = 'is not that of its formulas: run npm run formulas'
    const other = definition.formulas.map((formula) => ({
      ...formula,
      expression: `${formula.expression} + 0`,
    }))
    expect(() => built({}, other)).toThrow(fault)
    expect(() => built({ inputs: 'z' })).toThrow(fault)
    expect(() => built({ constants: [...script.constants, 'none'] })).toThrow(fault)
    expect(() => built({ steps: [] })).toThrow(fault)
    expect(() => chapterOf(definition, constants, parseExpression, () => undefined).steps).toThrow(fault)
  })
})
