import { finding } from '../../catalogue/findings/finding.js'
import { byRule, Calculation, type Given } from '../../engine/index.js'
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
 * When the sign of the zero-flow pressures is taken to be wrong. Turning it must bring the readings nearer to their
 * curves and the exponents of both directions together: a wrong sign bends one curve up and the other down. Below half a
 * pascal it matters little. Common practice, no source; none of 760 simulated tests without the mistake met all three.
 */
const TURNED = { smallest_Pa: 0.5, squares: 1.5, apart: 0.06, closer: 3 } as const

/** Both curves bend as they do where the zero-flow pressures were logged with the wrong sign. */
export const zeroFlowSign: Rule = ({ test }) => {
  const [first, second] = test.runs
  if (!first || !second || test.runs.some(({ curve }) => !curve.has('e'))) return silent
  if (test.runs.every(({ curve }) => Math.abs(curve.value('dp_0')) < TURNED.smallest_Pa)) return silent
  const turned = [withZeroFlowTurned(first), withZeroFlowTurned(second)]
  const [one, other] = turned
  if (!one || !other) return silent
  const squares = test.runs.reduce((sum, { curve }) => sum + squaresOf(curve.column('e')), 0)
  const squaresTurned = squaresOf(one.column('e')) + squaresOf(other.column('e'))
  const exponents = [first.curve.value('n'), second.curve.value('n')] as const
  const exponentsTurned = [one.value('n'), other.value('n')] as const
  const apart = Math.abs(exponents[0] - exponents[1])
  const apartTurned = Math.abs(exponentsTurned[0] - exponentsTurned[1])
  if (squares < TURNED.squares * squaresTurned || apart < TURNED.apart || apart < TURNED.closer * apartTurned)
    return silent
  const where = test.runs.flatMap(({ index }) => [
    `runs[${index}].zeroFlowBefore_Pa`,
    `runs[${index}].zeroFlowAfter_Pa`,
  ])
  return [finding('zero-flow-sign', { where }, { exponents, exponentsTurned })]
}

/** The curve of a run with the sign of its zero-flow pressure turned; undefined where a reading would be below zero. */
function withZeroFlowTurned({ curve }: WorkedRun) {
  const given = (symbol: 'dp_m' | 'q_m' | 'sign' | 'dp_01' | 'dp_02' | 'rho_d' | 'rho_x') =>
    curve.input(symbol)
  const turned = (symbol: 'dp_01' | 'dp_02'): Given | undefined => {
    const pressure = given(symbol)
    return pressure && 'value' in pressure ? byRule(0 - pressure.value, 'sign turned') : undefined
  }
  const block = new Calculation().add('turned', 'zero-flow pressure with its sign turned', leakageCurve, {
    dp_m: given('dp_m'),
    q_m: given('q_m'),
    sign: given('sign'),
    dp_01: turned('dp_01'),
    dp_02: turned('dp_02'),
    rho_d: given('rho_d'),
    rho_x: given('rho_x'),
  })
  return block.column('dp').every((pressure) => pressure > 0) && Number.isFinite(block.value('n'))
    ? block
    : undefined
}

const squaresOf = (values: ArrayLike<number>): number =>
  Array.from(values).reduce((sum, value) => sum + value ** 2, 0)
