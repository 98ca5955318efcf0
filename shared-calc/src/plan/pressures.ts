import { lowestPressure } from '../formulas/limits.js'
import { pressureSpan, pressuresToSet } from '../formulas/plan-pressures.js'
import type { Method } from '../methods/method.js'
import type { Direction, Plan } from '../record/index.js'
import {
  assumed,
  type Block,
  byRule,
  type Calculation,
  columnOf,
  fromRecord,
  type Given,
} from '../sheet/index.js'
import { HIGHEST_TO_SET_PA, MARGIN_PA, SPARE_READINGS } from './choices.js'

export interface PlannedPressures {
  readonly lowest: Block
  readonly span: Block
  readonly byDirection: ReadonlyMap<Direction, Block>
}

export const plannedDirections = ({ directions }: Plan): readonly Direction[] =>
  directions ?? ['depressurisation', 'pressurisation']

/** The zero-flow pressure to reckon with; 0 Pa where none is known, and rule `assumed-zero-flow` says so. */
const zeroFlow = ({ zeroFlowPressure_Pa: known }: Plan): Given =>
  known === undefined ? assumed(0, 'assumed-zero-flow') : fromRecord('plan.zeroFlowPressure_Pa', known)

/**
 * The pressures to set, highest first, and what the gauge shows at each.
 * @returns undefined where the zero-flow pressure is beyond the method's limit: then there is nothing to set
 */
export function workPressures(
  calculation: Calculation,
  { limits }: Method,
  plan: Plan,
): PlannedPressures | undefined {
  const zero = zeroFlow(plan)
  if (Math.abs(zero.value) > limits.zeroFlow_Pa.value) return undefined
  const lowest = calculation.add('plan.lowest', 'Lowest pressure to use', lowestPressure, {
    dp_floor: byRule(limits.lowestPressure_Pa.value, 'lowest pressure of the method'),
    k_z: byRule(limits.zeroFlowMultiple.value, 'multiple of the zero-flow pressure'),
    dp_s: columnOf([zero]),
  })
  const top = Math.min(HIGHEST_TO_SET_PA, limits.pressureCeiling_Pa.value - Math.abs(zero.value))
  const span = calculation.add('plan.span', 'Pressures to set', pressureSpan, {
    dp_min: lowest.ref('dp_min'),
    dp_top: byRule(top, 'highest pressure to set'),
    m_p: byRule(MARGIN_PA, 'margin for wavering readings'),
    dp_gap: byRule(limits.readingSpacing_Pa.value, 'spacing of readings of the method'),
    N_min: byRule(
      limits.readingsPerDirection.value + SPARE_READINGS,
      'least number of readings, with two spare',
    ),
  })
  const steps = Array.from({ length: span.value('N_r') }, (_, k) => byRule(k, 'step'))
  const byDirection = new Map(
    plannedDirections(plan).map((direction) => [
      direction,
      calculation.add(`plan.set.${direction}`, `Readings of the gauge: ${direction}`, pressuresToSet, {
        k_r: columnOf(steps),
        dp_top: span.ref('dp_top'),
        d_p: span.ref('d_p'),
        sign: byRule(direction === 'pressurisation' ? 1 : -1, direction),
        dp_0: zero,
      }),
    ]),
  )
  return { lowest, span, byDirection }
}
