import { type Block, byRule, type Calculation, type Given } from '../../engine/index.js'
import { allowedLeakage } from '../../formulas/plan-flows.js'
import { ageing, comparison, leakageToSeal, roundedValue } from '../../formulas/verdict.js'
import type { LimitRule } from '../../targets/presets.js'
import { basisOf } from './definite-target.js'
import type { Bases } from './derived.js'
import type { AtPressure, DefiniteTarget, WorkedCriterion, WorkedRun } from './worked-test.js'

/** Growth of leakage in the first year, as published. Source: calculation reference, section 3 (read). */
export const publishedAgeing = [
  {
    growth: 0.18,
    label: 'first year, lower published value',
    source: 'Moujalled et al. 2021, 61 French houses',
  },
  {
    growth: 0.25,
    label: 'first year, upper published value',
    source: 'Ismaiel et al. 2022, 73 450 Canadian dwellings',
  },
] as const

const symbols = { n: 'n_pr', qE: 'q_E', qF: 'q_F', q: 'q_pr' } as const

/** Compares what a target counts with each of its limits. */
export function judge(
  calculation: Calculation,
  bases: Bases,
  { target, limits }: DefiniteTarget,
  runs: readonly WorkedRun[],
  means: ReadonlyMap<number, AtPressure>,
): WorkedCriterion[] {
  return limits.map((rule, i) => {
    const id = `target${i + 1}`
    const counted = countedValue(rule, target.directions === 'each' ? runs : [], means)
    const value = rounded(calculation, id, counted.value, target.decimalPlaces)
    const L = byRule(rule.limit, 'limit of the target')
    const { quantity, referencePressure_Pa } = rule
    const B = basisValue(bases, rule)
    return {
      quantity,
      referencePressure_Pa,
      judged: counted.judged ?? (runs.length === 1 ? 'one direction' : 'mean'),
      value: calculation.add(id, `Against the target: ${quantity}`, comparison, { v: value, L }),
      flow: calculation.add(`${id}.flow`, `Flow at the limit: ${quantity}`, allowedLeakage, { L, B }),
      toSeal: calculation.add(`${id}.seal`, `Leakage to seal: ${quantity}`, leakageToSeal, {
        v: value,
        L,
        B,
        dp_r: byRule(referencePressure_Pa, 'reference pressure'),
      }),
      ageing: publishedAgeing.map(({ growth }, year) =>
        calculation.add(`${id}.age${year + 1}`, `After ageing by ${growth * 100} %: ${quantity}`, ageing, {
          v: value,
          L,
          g: byRule(growth, 'published growth of leakage'),
        }),
      ),
    }
  })
}

interface Counted {
  readonly value: Given
  readonly judged?: WorkedCriterion['judged']
}

/** The mean over the directions, or the worse of them where each must meet the limit. */
function countedValue(
  rule: LimitRule,
  each: readonly WorkedRun[],
  means: ReadonlyMap<number, AtPressure>,
): Counted {
  const symbol = symbols[basisOf(rule.quantity)]
  const values = each.map(({ at }) => reference(at, rule).ref(symbol))
  const [first, second] = values
  if (first && second)
    return { value: second.value > first.value ? second : first, judged: 'worse direction' }
  return { value: reference(means, rule).ref(symbol) }
}

function reference(
  at: ReadonlyMap<number, AtPressure>,
  { quantity, referencePressure_Pa }: LimitRule,
): Block {
  const found = at.get(referencePressure_Pa)
  const block = basisOf(quantity) === 'q' ? found?.rate : found?.derived
  if (!block) throw new RangeError(`nothing worked out at ${referencePressure_Pa} Pa`)
  return block
}

function rounded(calculation: Calculation, id: string, value: Given, places: number | undefined): Given {
  if (places === undefined) return value
  return calculation
    .add(`${id}.rounded`, 'Rounding asked for by the target', roundedValue, {
      v_u: value,
      k: byRule(places, 'decimal places of the target'),
    })
    .ref('v')
}

/** What the quantity of a limit is related to. */
export function basisValue(bases: Bases, { quantity }: LimitRule): Given {
  const basis = { n: bases.V, qE: bases.A_E, qF: bases.A_F, q: undefined }[basisOf(quantity)]
  return basis ?? byRule(1, 'the target limits the air flow itself')
}
