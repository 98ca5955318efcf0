import { finding } from '../../catalogue/findings/finding.js'
import { type Block, byRule, Calculation, type Given } from '../../engine/index.js'
import { leakageCurve } from '../../formulas/leakage-curve.js'
import type { WorkedRun } from '../work/worked-test.js'
import { exactlyOnCurve } from './readings.js'
import { type Rule, silent } from './rule.js'

/** As many values as a test of one run has that logs five before and five after. Common practice, no source. */
const FEWEST_ZEROES = 10

/** Every zero-flow pressure is exactly 0, though the gauge shows parts of a pascal: nobody read it. */
export const zeroFlowAllZero: Rule = ({ record, test }) => {
  const values = record.runs.flatMap(({ zeroFlowBefore_Pa = [], zeroFlowAfter_Pa = [] }) => [
    ...zeroFlowBefore_Pa,
    ...zeroFlowAfter_Pa,
  ])
  if (values.length < FEWEST_ZEROES || values.some((value) => value !== 0)) return silent
  const parts = record.runs.some(({ readings }) =>
    readings.some(({ pressure_Pa }) => !Number.isInteger(pressure_Pa)),
  )
  if (!parts || test.runs.every(exactlyOnCurve)) return silent
  const where = record.runs.flatMap((_, i) => [`runs[${i}].zeroFlowBefore_Pa`, `runs[${i}].zeroFlowAfter_Pa`])
  return [finding('zero-flow-all-zero', { where, value: 0 }, { count: values.length })]
}

/**
 * When the zero-flow pressures are taken to be logged wrongly. Another reading of them must bring the readings nearer to
 * their curves and the exponents of both directions together: a wrong one bends one curve up and the other down. Below
 * half a pascal it matters little. Common practice, no source; of 760 simulated tests without a mistake none met all three.
 */
const DOUBTED = { smallest_Pa: 0.5, squares: 1.5, apart: 0.06, closer: 3 } as const

/** How the zero-flow pressures may have been logged instead, and what is then to be taken of each. */
const otherwise = [
  { says: 'zero-flow-sign', share: -1, why: 'sign turned' },
  { says: 'zero-flow-subtracted', share: 0, why: 'subtracted already' },
] as const

/** Both curves bend as they do where zero-flow pressures have the wrong sign, or were subtracted before they were logged. */
export const zeroFlowMisread: Rule = ({ test }) => {
  const [first, second] = test.runs
  if (!first || !second || test.runs.some(({ curve }) => !curve.has('e'))) return silent
  if (test.runs.every(({ curve }) => Math.abs(curve.value('dp_0')) < DOUBTED.smallest_Pa)) return silent
  const logged = fitOf(first.curve, second.curve)
  const better = otherwise.flatMap(({ says, share, why }) => {
    const [one, other] = [curveWith(first, share, why), curveWith(second, share, why)]
    const fit = one && other && fitOf(one, other)
    return fit && isBetter(fit, logged) ? [{ says, fit }] : []
  })
  const [best] = better.sort((a, b) => a.fit.squares - b.fit.squares)
  if (!best) return silent
  const where = test.runs.flatMap(({ index }) => [
    `runs[${index}].zeroFlowBefore_Pa`,
    `runs[${index}].zeroFlowAfter_Pa`,
  ])
  return [finding(best.says, { where }, { exponents: logged.exponents, exponentsThen: best.fit.exponents })]
}

interface BothFits {
  readonly squares: number
  readonly exponents: readonly [number, number]
}

const fitOf = (one: Block<string>, other: Block<string>): BothFits => ({
  squares: squaresOf(one.column('e')) + squaresOf(other.column('e')),
  exponents: [one.value('n'), other.value('n')],
})

const apartBy = ({ exponents: [one, other] }: BothFits): number => Math.abs(one - other)

const isBetter = (then: BothFits, logged: BothFits): boolean =>
  logged.squares >= DOUBTED.squares * then.squares &&
  apartBy(logged) >= DOUBTED.apart &&
  apartBy(logged) >= DOUBTED.closer * apartBy(then)

/** The curve of a run with a share of its zero-flow pressure; undefined where a reading would be below zero. */
function curveWith({ curve }: WorkedRun, share: number, why: string): Block<string> | undefined {
  const given = (symbol: 'dp_m' | 'q_m' | 'sign' | 'dp_01' | 'dp_02' | 'rho_d' | 'rho_x') =>
    curve.input(symbol)
  const shared = (symbol: 'dp_01' | 'dp_02'): Given | undefined => {
    const pressure = given(symbol)
    return pressure && 'value' in pressure ? byRule(share * pressure.value, why) : undefined
  }
  const block = new Calculation().add('otherwise', `zero-flow pressure: ${why}`, leakageCurve, {
    dp_m: given('dp_m'),
    q_m: given('q_m'),
    sign: given('sign'),
    dp_01: shared('dp_01'),
    dp_02: shared('dp_02'),
    rho_d: given('rho_d'),
    rho_x: given('rho_x'),
  })
  return block.column('dp').every((pressure) => pressure > 0) && Number.isFinite(block.value('n'))
    ? block
    : undefined
}

const squaresOf = (values: ArrayLike<number>): number =>
  Array.from(values).reduce((sum, value) => sum + value ** 2, 0)
