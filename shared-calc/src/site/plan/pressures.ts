import { type Direction, type Plan, runDirections } from '../../contract/record/index.js'
import {
  assumed,
  type Bindings,
  type BlockOf,
  byRule,
  type Calculation,
  columnOf,
  fromRecord,
  type Given,
} from '../../engine/index.js'
import { lowestPressure } from '../../formulas/limits.js'
import { pressureSpan, pressuresToSet, stationsToSet } from '../../formulas/plan-pressures.js'
import type { Method, Stations } from '../../methods/method.js'

/** Choices of the plan that no standard makes. Source of all: common practice, no source. */

/** Exponents between which most buildings lie; flows are shown for the ends and for the usual value, Pa^n. */
export const EXPECTED_EXPONENTS = [0.55, 0.65, 0.75] as const

/** How far the highest pressure to set is above the one the method needs, Pa: above it, without risk to linings. */
export const ABOVE_NEEDED_PA = 10

/** Margin above the lowest pressure that the method allows, Pa, as readings fluctuate around the pressure set. */
const MARGIN_PA = 2

/** Readings to plan for beyond the method's least number, so that one may be lost. */
const SPARE_READINGS = 2

/** Gauge readings to set, in steps or at the stations of the method. */
export type SetBlock = BlockOf<typeof pressuresToSet | typeof stationsToSet>

export interface PlannedPressures {
  readonly lowest: BlockOf<typeof lowestPressure>
  readonly lowestToSet: Given
  readonly highestToSet: Given
  /** Rows are the pressures to set, highest first. */
  readonly byDirection: ReadonlyMap<Direction, SetBlock>
  /** Stations that lie below the lowest pressure to use, and are not to be set. */
  readonly stationsTooLow: readonly number[]
}

export const plannedDirections = ({ directions }: Plan): readonly Direction[] => directions ?? runDirections

/** The zero-flow pressure used; 0 Pa where none is known, and rule `assumed-zero-flow` says so. */
const zeroFlow = ({ zeroFlowPressure_Pa: known }: Plan): Given =>
  known === undefined ? assumed(0, 'assumed-zero-flow') : fromRecord('plan.zeroFlowPressure_Pa', known)

/**
 * The pressures to set, highest first, and what the gauge shows at each.
 * @returns undefined where the zero-flow pressure leaves none: it is beyond the method's limit, or above every station
 */
export function workPressures(
  calculation: Calculation,
  method: Method,
  plan: Plan,
): PlannedPressures | undefined {
  const { limits, stations } = method
  const zero = zeroFlow(plan)
  if (Math.abs(zero.value) > limits.zeroFlow_Pa.value) return undefined
  const lowest = calculation.add('plan.lowest', 'Lowest usable pressure', lowestPressure, {
    dp_floor: byRule(limits.lowestPressure_Pa.value, 'lowest pressure of the method'),
    k_z: byRule(limits.zeroFlowMultiple.value, 'multiple of the zero-flow pressure'),
    dp_s: columnOf([zero]),
  })
  return stations
    ? atStations(calculation, stations, plan, zero, lowest)
    : inSteps(calculation, method, plan, zero, lowest)
}

function inSteps(
  calculation: Calculation,
  { limits }: Method,
  plan: Plan,
  zero: Given,
  lowest: PlannedPressures['lowest'],
): PlannedPressures {
  const top = Math.min(
    limits.highestPressure_Pa.value + ABOVE_NEEDED_PA,
    limits.pressureCeiling_Pa.value - Math.abs(zero.value),
  )
  const span = calculation.add('plan.span', 'Pressures to set', pressureSpan, {
    dp_min: lowest.ref('dp_min'),
    dp_top: byRule(top, 'highest pressure to set'),
    m_p: byRule(MARGIN_PA, 'margin for unsteady readings'),
    dp_gap: byRule(limits.readingSpacing_Pa.value, 'spacing of readings of the method'),
    N_min: byRule(
      limits.readingsPerDirection.value + SPARE_READINGS,
      'smallest number of readings, plus two spare',
    ),
  })
  const steps = Array.from({ length: span.value('N_r') }, (_, k) => byRule(k, 'step'))
  const byDirection = eachDirection(plan, (direction) =>
    calculation.add(`plan.set.${direction}`, `Readings of the gauge: ${direction}`, pressuresToSet, {
      k_r: columnOf(steps),
      dp_top: span.ref('dp_top'),
      d_p: span.ref('d_p'),
      ...signed(direction, zero),
    }),
  )
  const [lowestToSet, highestToSet] = [span.ref('dp_low'), span.ref('dp_top')]
  return { lowest, lowestToSet, highestToSet, byDirection, stationsTooLow: [] }
}

function atStations(
  calculation: Calculation,
  { pressures_Pa }: Stations,
  plan: Plan,
  zero: Given,
  lowest: PlannedPressures['lowest'],
): PlannedPressures | undefined {
  const least = lowest.value('dp_min')
  const usable = pressures_Pa.filter((pressure) => pressure >= least).sort((a, b) => b - a)
  const stations = usable.map((pressure) => byRule(pressure, 'station of the method'))
  const [highestToSet, lowestToSet] = [stations[0], stations.at(-1)]
  if (!highestToSet || !lowestToSet) return undefined
  const byDirection = eachDirection(plan, (direction) =>
    calculation.add(`plan.set.${direction}`, `Readings of the gauge: ${direction}`, stationsToSet, {
      dp: columnOf(stations),
      ...signed(direction, zero),
    }),
  )
  const stationsTooLow = pressures_Pa.filter((pressure) => pressure < least)
  return { lowest, lowestToSet, highestToSet, byDirection, stationsTooLow }
}

const eachDirection = <B>(plan: Plan, work: (direction: Direction) => B): Map<Direction, B> =>
  new Map(plannedDirections(plan).map((direction) => [direction, work(direction)]))

const signed = (direction: Direction, zero: Given): Bindings => ({
  sign: byRule(direction === 'pressurisation' ? 1 : -1, direction),
  dp_0: zero,
})
