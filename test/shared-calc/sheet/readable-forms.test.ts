import fc from 'fast-check'
import { SaxesParser } from 'saxes'
import { describe, expect, it } from 'vitest'
import { columnFunctions, scalarFunctions } from '../../../shared-calc/src/engine/evaluate/functions.js'
import { symbolParts, symbolsOf, toMathml, toText } from '../../../shared-calc/src/engine/index.js'
import { parseExpression } from '../../../shared-calc/src/engine/parse/parse-with-mathjs.js'
import { chapters, formulaList } from '../../../shared-calc/src/formulas/list.js'
import { ourValue } from './support/evaluate-expression'
import { columnExpression, numbers, scalarExpression } from './support/random-expressions'

interface Parsed {
  readonly root: string
  readonly namespace: string | undefined
  readonly identifiers: readonly string[]
}

/** Parses XML strictly: throws where it is not well-formed. */
function parseXml(xml: string): Parsed {
  const parser = new SaxesParser({ xmlns: true })
  const names: string[] = []
  const identifiers: string[] = []
  let namespace: string | undefined
  let open = ''
  parser.on('error', (error) => {
    throw error
  })
  parser.on('opentag', (tag) => {
    if (names.length === 0) namespace = tag.uri
    names.push(tag.local)
    open = tag.local
  })
  parser.on('closetag', () => {
    open = ''
  })
  parser.on('text', (text) => {
    if (open === 'mi') identifiers.push(text)
  })
  parser.write(xml).close()
  return { root: names[0] ?? '', namespace, identifiers }
}

describe('MathML of a formula', () => {
  it.each(formulaList().map(({ chapter, symbol, mathml }) => [chapter, symbol, mathml] as const))(
    'is well-formed: %s, %s',
    (_, __, mathml) => {
      expect(parseXml(mathml)).toMatchObject({
        root: 'math',
        namespace: 'http://www.w3.org/1998/Math/MathML',
      })
    },
  )

  it('is well-formed for any expression', () => {
    fc.assert(
      fc.property(fc.oneof(scalarExpression, columnExpression), (text) => {
        expect(parseXml(toMathml('r', parseExpression(text))).root).toBe('math')
      }),
      { numRuns: 300 },
    )
  })

  it.each(chapters.map(({ chapter }) => [chapter.title, chapter] as const))(
    'names only symbols that its chapter declares with name and unit: %s',
    (_, chapter) => {
      const functions = [...Object.keys(scalarFunctions), ...Object.keys(columnFunctions)].map((name) =>
        name.replace('_', ' '),
      )
      const shown = new Set(['e', 'ln', 't', ...functions])
      const declared = new Set(
        [...chapter.quantities.values()].flatMap(({ symbol, name, unit }) => {
          expect(
            [name, unit].every((text) => text.trim() !== ''),
            symbol,
          ).toBe(true)
          const { base, subscript } = symbolParts(symbol)
          return subscript === undefined ? [base] : [base, subscript]
        }),
      )
      for (const step of chapter.steps) {
        for (const symbol of symbolsOf(step.tree)) expect(chapter.quantities.has(symbol), symbol).toBe(true)
        for (const name of parseXml(toMathml(step.symbol, step.tree)).identifiers)
          expect(declared.has(name) || shown.has(name), `${name} in ${step.expression}`).toBe(true)
      }
    },
  )
})

describe('text of a formula', () => {
  /** Back from the printed signs to those of mathjs. */
  const typed = (text: string) =>
    text
      .replaceAll('·', '*')
      .replaceAll('−', '-')
      .replaceAll(';', ',')
      .replaceAll('ln(', 'log(')
      .replaceAll('√(', 'sqrt(')
      .replaceAll('Σ(', 'sum(')

  it('still has the value of the formula when it is read back: no bracket is lost', () => {
    // Sums and columns print their elementwise operators without the dot, so scalars only.
    const plain = scalarExpression.filter((text) => !/[uv]/.test(text))
    fc.assert(
      fc.property(plain, numbers, (expression, values) => {
        const printed = toText(parseExpression(expression), (symbol) => symbol)
        expect(ourValue(typed(printed), values), printed).toBe(ourValue(expression, values))
      }),
      { numRuns: 500 },
    )
  })

  it('uses the signs of print', () => {
    expect(toText(parseExpression('sqrt(sum(x .^ 2)/N)*log(dp_r) - C_L'))).toBe('√(Σ(x^2)/N)·ln(Δp_r) − C_L')
    expect(toText(parseExpression('-rho_i ./ xbar'))).toBe('−ρ_i/x̄')
  })
})
