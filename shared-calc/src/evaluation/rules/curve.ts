import { finding } from '../../catalogue/findings/finding.js'
import { largest, smallest, studentT } from '../../engine/evaluate/functions.js'
import { exceeds, fallsBelow } from '../../engine/index.js'
import { expectedScatter } from '../work/expected-scatter.js'
import { inEach, type Rule, silent } from './rule.js'

/** The exponent lies between fully turbulent and fully laminar flow. */
export const exponentRange: Rule = ({ method, test }) => {
  if (method.assumedExponent) return silent
  const { lowest, highest, source } = method.limits.exponent
  return inEach(test.runs, ({ curve, direction, index }) => {
    const value = curve.value('n')
    if (!fallsBelow(value, lowest) && !exceeds(value, highest)) return silent
    return [
      finding(
        'exponent-range',
        { where: [`runs[${index}].readings`], source, value, limit: value < lowest ? lowest : highest },
        { direction, exponent: value, lowest, highest },
      ),
    ]
  })
}

/** The readings lie on one line. */
export const correlation: Rule = ({ method, test }) => {
  if (method.stations || !method.limits.rSquared) return silent
  const { value: limit, source } = method.limits.rSquared
  return inEach(test.runs, ({ curve, scatter, direction, index }) => {
    if (!scatter) return silent
    const value = curve.value('r_2')
    if (!fallsBelow(value, limit)) return silent
    const where = [`runs[${index}].readings`]
    return [finding('correlation', { where, source, value, limit }, { direction, rSquared: value, limit })]
  })
}

/**
 * Chance that any reading of a good run is called an outlier; each reading takes its part of it, as many are looked at.
 * Source: Bonferroni's inequality, Cook and Weisberg 1982, 2.2.2 (value from memory).
 */
const OUTLIER_ALPHA = 0.05
/** A reading that lies off the line through all the others. */
export const outlier: Rule = ({ test }) =>
  inEach(test.runs, ({ curve, scatter, residuals, deviation, direction, index }) => {
    if (!scatter || scatter.rows < 4) return silent
    const where = (i: number) => [`runs[${index}].readings[${i}]`]
    if (!residuals) {
      const squares = scatter.value('SSE')
      if (squares <= 1e-24 * scatter.rows) return silent
      return inEach(scatter.column('d_e'), (left, i) =>
        left > 1e-9 * squares
          ? silent
          : [finding('outlier/others-exact', { where: where(i) }, { direction, reading: i })],
      )
    }
    const limit = studentT(OUTLIER_ALPHA / scatter.rows, scatter.rows - 3)
    const off = deviation.column('d_fit')
    const pressures = curve.column('dp')
    const worthRepeating = (i: number) =>
      expectedScatter.times *
      Math.hypot(
        expectedScatter.flow,
        (curve.value('n') * expectedScatter.pressure_Pa) / (pressures[i] as number),
      )
    return inEach(residuals.column('t_e'), (value, i) =>
      !exceeds(Math.abs(value), limit) || Math.abs(off[i] as number) < worthRepeating(i)
        ? silent
        : [
            finding(
              'outlier/residual',
              { where: where(i), value, limit },
              { direction, reading: i, residual: value, limit },
            ),
          ],
    )
  })

/** The target's reference pressure lies outside the pressures that were read. */
export const extrapolatedTarget: Rule = ({ test }) => {
  const pressure_Pa = test.target?.target.referencePressure_Pa
  if (pressure_Pa === undefined) return silent
  return inEach(test.runs, ({ curve, direction, index }) => {
    const lowest = smallest(curve.column('dp'))
    const highest = largest(curve.column('dp'))
    if (!fallsBelow(pressure_Pa, lowest) && !exceeds(pressure_Pa, highest)) return silent
    return [
      finding(
        'extrapolated-target',
        {
          where: [`runs[${index}].readings`],
          value: pressure_Pa,
          limit: pressure_Pa < lowest ? lowest : highest,
        },
        { direction, pressure_Pa, lowest, highest },
      ),
    ]
  })
}
