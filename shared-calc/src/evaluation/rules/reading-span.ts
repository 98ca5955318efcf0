import { finding } from '../../catalogue/findings/finding.js'
import { largest, smallest } from '../../engine/evaluate/functions.js'
import { exceeds, fallsBelow } from '../../engine/index.js'
import type { WorkedTest } from '../work/worked-test.js'
import { inEach, type Rule, silent } from './rule.js'

/**
 * Readings too close together say little of the exponent, and nothing far away from themselves. Common practice, no
 * source: a figure may lie one and a half times as far outside the readings as they span, in logarithms; the exponent's
 * interval may be 0.2 wide, and wider only where the readings span a factor of 2 about the pressure judged.
 */
const FARTHEST = 1.5
const WIDEST_EXPONENT = 0.2
const LEAST_FACTOR = 2
/** Below this the readings are one station, and a line through them is noise. */
const ONE_STATION = 1.05

/** The pressures of the limits, each once, or 50 Pa where there is none. */
function pressuresJudged({ criteria }: WorkedTest): readonly number[] {
  if (criteria.length === 0) return [50]
  return [...new Set(criteria.map(({ referencePressure_Pa }) => referencePressure_Pa))]
}

export const readingSpan: Rule = ({ test }) => {
  const pressures = pressuresJudged(test)
  return inEach(test.runs, ({ curve, scatter, direction, index }) => {
    if (!scatter) return silent
    const [lowest, highest] = [smallest(curve.column('dp')), largest(curve.column('dp'))]
    const factor = highest / lowest
    const width = scatter.has('n_hi') ? scatter.value('n_hi') - scatter.value('n_lo') : 0
    const vague = exceeds(width, WIDEST_EXPONENT)
    const where = [`runs[${index}].readings`]
    if (fallsBelow(factor, ONE_STATION))
      return [
        finding(
          'reading-span/one-station',
          { where, value: factor, limit: ONE_STATION },
          { direction, lowest, highest },
        ),
      ]
    return inEach(pressures, (pressure_Pa) => {
      const away = Math.max(0, Math.log(lowest / pressure_Pa), Math.log(pressure_Pa / highest))
      if (exceeds(away, FARTHEST * Math.log(factor)))
        return [
          finding(
            'reading-span/far',
            { where, value: away / Math.log(factor), limit: FARTHEST },
            { direction, pressure_Pa, lowest, highest },
          ),
        ]
      if (!vague && !fallsBelow(factor, LEAST_FACTOR)) return silent
      const facts = { where, value: vague ? width : factor, limit: vague ? WIDEST_EXPONENT : LEAST_FACTOR }
      if (!vague)
        return [finding('reading-span/narrow', facts, { direction, lowest, highest, factor: LEAST_FACTOR })]
      const inside = away === 0 && !fallsBelow(factor, LEAST_FACTOR)
      return [
        finding(
          'reading-span/vague',
          { ...facts, severity: inside ? 'caution' : 'invalidates' },
          { direction, width, limit: WIDEST_EXPONENT, pressure_Pa },
        ),
      ]
    })
  })
}
