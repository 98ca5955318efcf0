import type { Building, TargetQuantity, TestRecord } from '../../contract/record/index.js'
import { type BlockOf, byRule, type Calculation, type Given } from '../../engine/index.js'
import { atReferencePressure } from '../../formulas/at-reference-pressure.js'
import type { standardAir } from '../../formulas/standard-air.js'
import { comparison } from '../../formulas/verdict.js'
import { limitsSoFar, unitOf } from './definite-target.js'
import { basesOf, workDerived, workNormalisedArea } from './derived.js'
import { countedAt } from './judge.js'

/** What a test is heading for, against the limit of its target that decides. Units are those of the evaluation. */
export interface RunningCriterion {
  readonly quantity: TargetQuantity
  readonly referencePressure_Pa: number
  readonly value: number
  readonly limit: number
  readonly unit: string
}

interface Curve {
  readonly standard: BlockOf<typeof standardAir>
  readonly n: Given
}

/**
 * Of all limits that the target has for this building, the one that decides: the nearest, or where one is enough, the one kept best.
 * Factors and rounding of a target are left to the result.
 * @returns undefined without a target, and where the building lacks what its limits are related to
 */
export function runningCriterion(
  calculation: Calculation,
  { standard, n }: Curve,
  building: Partial<Building>,
  target: TestRecord['target'],
): RunningCriterion | undefined {
  const { limits, satisfiedBy } = limitsSoFar({ target, building: building as Building })
  const bases = basesOf({ building })
  const judged = limits.map((rule, i) => {
    const { referencePressure_Pa: pressure, quantity, limit } = rule
    const id = `limit${i + 1}`
    const rate = calculation.add(`${id}.rate`, `at ${pressure} Pa`, atReferencePressure, {
      dp_r: byRule(pressure, 'reference pressure'),
      C_L: standard.ref('C_L'),
      n,
    })
    const derived = workDerived(calculation, `${id}.derived`, 'derived', bases, rate, false)
    const area = workNormalisedArea(calculation, `${id}.area`, 'area', bases, rate, pressure)
    const value = countedAt({ rate, derived, area }, rule)
    const share = calculation
      .add(id, `against the limit of ${quantity}`, comparison, {
        v: value,
        L: byRule(limit, 'limit of the target'),
      })
      .value('M_L')
    return {
      share,
      criterion: {
        quantity,
        referencePressure_Pa: pressure,
        value: value.value,
        limit,
        unit: unitOf(quantity),
      },
    }
  })
  const [least, ...others] = judged.sort((a, b) => a.share - b.share)
  return (satisfiedBy === 'any' ? (others.at(-1) ?? least) : least)?.criterion
}
