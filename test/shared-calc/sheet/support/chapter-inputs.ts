import fc, { type Arbitrary } from 'fast-check'
import {
  type Block,
  byRule,
  Calculation,
  type Chapter,
  columnFromRecord,
} from '../../../../shared-calc/src/engine/index.js'

const ROWS = 7

// Between which bounds a symbol may lie so that its chapters can be worked out; anything else takes 0.5 to 3.
const bounds: Readonly<Record<string, readonly [number, number]>> = {
  dp_m: [12, 70],
  q_m: [100, 2000],
  dp_01: [-2, 2],
  dp_02: [-2, 2],
  dp_z: [-6, 6],
  dp_s: [-6, 6],
  dp_d: [-300, -20],
  dp_r: [4, 75],
  rho_d: [1.1, 1.3],
  rho_x: [1.1, 1.3],
  theta: [-20, 40],
  theta_i: [10, 30],
  theta_e: [-20, 40],
  phi: [0, 1],
  p_bar: [80_000, 105_000],
  h: [-300, 3000],
  h_b: [3, 60],
  x: [2, 4.3],
  e: [-0.05, 0.05],
  d_e: [1e-4, 1e-2],
  xbar: [2.5, 4],
  S_xx: [0.1, 1],
  n: [0.5, 1],
  S_n: [0.001, 0.1],
  t_95: [1.96, 12.7],
  n_a: [0.5, 1],
  r_a: [0.005, 0.4],
  r_k: [0.01, 0.3],
  N_s: [150, 250],
  T_d: [260, 300],
  T_x: [260, 300],
  P_1: [0.01, 0.99],
  P_2: [0.01, 0.99],
  rho: [-0.95, 0.95],
  t: [0.01, 0.99],
}
// Whole numbers, and what only takes one of a few values.
const whole: Readonly<Record<string, readonly number[]>> = {
  N: [ROWS],
  k: [0, 1, 2, 3],
  sign: [1],
  nu_e: [1, 2, 5, 30],
  s: [0, 1],
  N_m: [1, 2, 4],
}
// The upper of two stations: some rows of each.
const fixed: Readonly<Record<string, readonly number[]>> = { hi: [1, 0, 1, 1, 0, 0, 1] }

function inputOf(symbol: string): Arbitrary<number> {
  const values = whole[symbol]
  if (values) return fc.constantFrom(...values)
  const [min, max] = bounds[symbol] ?? [0.5, 3]
  // Evenly spread, without a liking for the ends: numbers next to zero, whose squares vanish, are errors to spreadsheets.
  return fc.noBias(fc.integer({ min: 1, max: 1e6 })).map((share) => min + ((max - min) * share) / 1e6)
}

/** Pressures of two stations lie well apart, as a test has them: stations that meet give exponents beyond all numbers. */
function apart({ inputs }: Chapter, symbol: string, values: readonly number[]): readonly number[] {
  if (symbol !== 'dp_m' || !inputs.some((input) => input.symbol === 'hi')) return values
  return values.map((value, row) => (fixed.hi?.[row] === 1 ? 45 + value / 5 : 8 + value / 10))
}

/**
 * Whether no value of a block is what rounding leaves of a difference: LibreOffice calls a sum that cancels to its last
 * digits zero, as all spreadsheets do. What formulas multiply and square stays far above.
 */
export function nothingCancels(block: Block<string>): boolean {
  return block.chapter.steps.every(({ symbol, rows }) =>
    [rows ? block.column(symbol) : block.value(symbol)]
      .flatMap((values) => (typeof values === 'number' ? values : [...values]))
      .every((value) => value === 0 || Math.abs(value) > 1e-12),
  )
}

/** A chapter worked out with random inputs inside the bounds of what they mean. */
export function evaluatedChapter(chapter: Chapter): Arbitrary<Block<string>> {
  const inputs = chapter.inputs.map(({ symbol, rows }) =>
    fixed[symbol]
      ? fc.constant([...fixed[symbol]])
      : rows
        ? fc.array(inputOf(symbol), { minLength: ROWS, maxLength: ROWS })
        : inputOf(symbol).map((value) => [value]),
  )
  return fc.tuple(...inputs).map((values) => {
    const bindings = Object.fromEntries(
      chapter.inputs.map(({ symbol, rows }, i) => {
        const given = apart(chapter, symbol, values[i] ?? [])
        return [symbol, rows ? columnFromRecord(given, String) : byRule(given[0] ?? Number.NaN, 'test')]
      }),
    )
    return new Calculation().add('random', chapter.title, chapter, bindings)
  })
}
