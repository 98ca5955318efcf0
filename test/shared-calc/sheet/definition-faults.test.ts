import { describe, expect, it } from 'vitest'
import { FormulaError, type Input } from '../../../shared-calc/src/engine/index.js'
import { layOut } from '../../../shared-calc/src/engine/parse/layout.js'
import { parseExpression } from '../../../shared-calc/src/engine/parse/parse-with-mathjs.js'

const source = { text: 'test', seen: 'definition' } as const
const quantity = (symbol: string) => ({ symbol, name: symbol, unit: '1' })
const laidOut = (inputs: readonly Input[], formulas: Readonly<Record<string, string>>) =>
  layOut(
    {
      title: 'test chapter',
      inputs,
      formulas: Object.entries(formulas).map(([symbol, expression]) => ({
        ...quantity(symbol),
        expression,
        source,
      })),
    },
    [],
    parseExpression,
  )
const a = quantity('a')
const column = (symbol: string): Input => ({ ...quantity(symbol), rows: true })

function faultOf(inputs: readonly Input[], formulas: Readonly<Record<string, string>>): string {
  try {
    laidOut(inputs, formulas)
  } catch (error) {
    if (error instanceof FormulaError || error instanceof SyntaxError) return error.message
    throw error
  }
  return 'no fault'
}

describe('a chapter of formulas', () => {
  it('takes its formulas in any order', () => {
    const { steps } = laidOut([a], { last: 'middle + first', middle: '2*first', first: 'a + 1' })
    expect(steps.map(({ symbol }) => symbol)).toEqual(['first', 'middle', 'last'])
  })

  it.each([
    ['itself', { p: 'p + a' }, 'formulas go in a circle: p → p'],
    ['each other', { p: 'q*a', q: 'p/2' }, 'formulas go in a circle: p → q → p'],
    ['one another in a ring', { p: 'a*q', q: 'r', r: 'p' }, 'formulas go in a circle: p → q → r → p'],
  ])('names every symbol of a cycle: formulas that use %s', (_, formulas, message) => {
    expect(faultOf([a], formulas)).toBe(message)
  })

  it('names only the cycle, not the way into it', () => {
    expect(faultOf([a], { way: 'p + a', p: 'q', q: 'p' })).toBe('formulas go in a circle: p → q → p')
  })

  it('names the unknown symbol and the formula that uses it', () => {
    expect(faultOf([a], { p: 'a + C' })).toBe('formula p uses the unknown symbol C')
  })

  // Full mathjs would read C as coulomb, m as metre and i as the imaginary unit.
  it.each(['C', 'm', 'h', 'i', 'e', 'pi', 'NaN'])(
    'takes %s for no unit and no constant of mathjs',
    (symbol) => {
      expect(faultOf([a], { p: `a*${symbol}` })).toContain(symbol)
    },
  )

  it.each([
    ['an input that no formula uses', [a, quantity('b')], { p: 'a' }, 'input b is used by no formula'],
    ['a symbol that is input and formula', [a], { a: '2', p: 'a' }, 'a is an input and a formula'],
  ])('refuses %s', (_, inputs, formulas, message) => {
    expect(faultOf(inputs, formulas)).toContain(message)
  })

  it('refuses a symbol defined twice', () => {
    const twice = [
      { ...quantity('p'), expression: 'a', source },
      { ...quantity('p'), expression: '2*a', source },
    ]
    expect(() => layOut({ title: 'twice', inputs: [a], formulas: twice }, [], parseExpression)).toThrow(
      'symbol p is defined twice',
    )
  })

  it.each([
    ['u*v', 'operator * between columns: write .*'],
    ['u/v', 'operator / between columns: write ./'],
    ['a/u', 'operator / between columns: write ./'],
    ['u^2', 'operator ^ between columns: write .^'],
    ['2^u', 'operator ^ between columns: write .^'],
  ])('refuses %s, which mathjs reads as a matrix operation', (expression, message) => {
    const inputs = [column('u'), column('v'), a].filter(({ symbol }) => expression.includes(symbol))
    expect(faultOf(inputs, { p: expression })).toBe(message)
  })

  it.each([
    ['nothing(a)', 'function nothing is unknown'],
    ['sum(a)', 'function sum is unknown, or its arguments are not of its kind'],
    ['mean(u + 1)', 'function mean is unknown, or its arguments are not of its kind'],
    ['count(a)', 'function count is unknown, or its arguments are not of its kind'],
  ])('refuses %s', (expression, message) => {
    const inputs = [column('u'), a].filter(({ symbol }) => new RegExp(`\\b${symbol}\\b`).test(expression))
    expect(faultOf(inputs, { p: expression })).toContain(message)
  })

  it.each([
    'a == 2',
    'a ? 1 : 2',
    '[a, 2]',
    'a; 2',
    'f(a) = a',
    'a = 3',
    'a!',
    '"text"',
    'a[1]',
    'a > 1',
    'a.b',
  ])('refuses %s: formulas use numbers, symbols, brackets, arithmetic and functions only', (expression) => {
    expect(faultOf([a], { p: expression })).toMatch(/which formulas may not use|Unexpected|expected/)
  })
})
