import fc, { type Arbitrary } from 'fast-check'

/** Scalars and columns that random expressions are made of. */
export const SCALARS = ['a', 'b', 'c'] as const
export const COLUMNS = ['u', 'v'] as const
export const ROWS = 4

const number = fc.integer({ min: 1, max: 400 }).map((n) => String(n / 100))
const bracketed = (part: Arbitrary<string>) =>
  fc.oneof(
    part,
    part.map((text) => `(${text})`),
  )
const join = (parts: Arbitrary<string>[]) => fc.tuple(...parts).map((texts) => texts.join(''))

const { scalar, column } = fc.letrec<{ scalar: string; column: string }>((tie) => {
  const s = bracketed(tie('scalar'))
  const c = bracketed(tie('column'))
  const either = fc.oneof(
    tie('scalar').map((text) => `(${text})`),
    c,
  )
  const plain = fc.constantFrom('+', ' - ', '*', '/', '^')
  // Operators with a dot, + and − mean the same for columns whatever stands beside them, so they need no brackets.
  const elementwise = fc.constantFrom(' + ', ' - ', ' .* ', ' ./ ', ' .^ ')
  const of = (name: string, part: Arbitrary<string>) => part.map((text) => `${name}(${text})`)
  const named = (part: Arbitrary<string>) =>
    fc.oneof(...['abs', 'sqrt', 'exp', 'log'].map((name) => of(name, part)))
  return {
    scalar: fc.oneof(
      { maxDepth: 4, depthIdentifier: 'expression' },
      fc.constantFrom<string>(...SCALARS),
      number,
      join([s, plain, s]),
      join([s, plain, s]),
      join([s, fc.constantFrom('^', '^-'), s]),
      s.map((text) => `-${text}`),
      named(s),
      fc.tuple(fc.constantFrom('max', 'min'), s, s).map(([name, l, r]) => `${name}(${l}, ${r})`),
      of('sum', c),
      fc
        .tuple(fc.constantFrom('mean', 'max', 'min', 'count'), fc.constantFrom(...COLUMNS))
        .map(([name, symbol]) => `${name}(${symbol})`),
    ),
    column: fc.oneof(
      { maxDepth: 4, depthIdentifier: 'expression' },
      fc.constantFrom<string>(...COLUMNS),
      join([c, elementwise, either]),
      join([either, elementwise, c]),
      c.map((text) => `-${text}`),
      named(c),
      // A scalar may stand before a column with the plain operator, and a column may be divided by one.
      fc.tuple(tie('scalar'), tie('column')).map(([l, r]) => `((${l})*(${r}))`),
      fc.tuple(tie('column'), tie('scalar')).map(([l, r]) => `((${l})/(${r}))`),
    ),
  }
})

/** Text of expressions with a scalar value: nested powers, unary minus, functions, sums over columns. */
export const scalarExpression = scalar
/** Text of expressions with a value a row. */
export const columnExpression = column

const value = fc.integer({ min: 50, max: 300 }).map((n) => n / 100)
const signed = fc.tuple(value, fc.boolean()).map(([v, negative]) => (negative ? -v : v))

/** Numbers for every symbol: scalars of either sign, columns of either sign. */
export const numbers = fc.record({
  a: signed,
  b: signed,
  c: value,
  u: fc.array(signed, { minLength: ROWS, maxLength: ROWS }),
  v: fc.array(value, { minLength: ROWS, maxLength: ROWS }),
})
export type Numbers = { a: number; b: number; c: number; u: number[]; v: number[] }
