import { constantValue } from '../../catalogue/constants.js'
import { limitedName } from '../../catalogue/shown-figure.js'
import { type Block, byRule, type Calculation, type Given } from '../../engine/index.js'
import { allowedLeakage } from '../../formulas/plan-flows.js'
import {
  ageing,
  areaToSeal,
  comparison,
  extendedValue,
  flowThroughAllowedArea,
  leakageToSeal,
  limitBefore as limitBeforeChapter,
  limitOfPlaces,
  roundedValue,
  sampledValue,
} from '../../formulas/verdict.js'
import type { Method } from '../../methods/method.js'
import type { LimitRule } from '../../targets/index.js'
import { basisOf } from './definite-target.js'
import type { Bases } from './derived.js'
import type { AtPressure, DefiniteTarget, WorkedCriterion, WorkedRun } from './worked-test.js'

/** Growth of leakage in the first year, as published. Source: calculation reference, section 3 (read). */
export const publishedAgeing = [
  {
    growth: 0.18,
    label: 'after one year (lower published value)',
    source: 'Moujalled et al. 2021, 61 French houses',
  },
  {
    growth: 0.25,
    label: 'after one year (upper published value)',
    source: 'Ismaiel et al. 2022, 73 450 Canadian dwellings',
  },
] as const

/** Symbol of what each quantity of a limit is about. */
const symbols = { n: 'n_pr', qE: 'q_E', qF: 'q_F', qT: 'q_T', q: 'q_pr', aE: 'A_N' } as const
type Counts = (typeof symbols)[keyof typeof symbols]

interface Around {
  readonly calculation: Calculation
  readonly bases: Bases
  readonly method: Method
}

/**
 * Compares what a target counts with each of its limits. Where any one limit is enough, the one that is kept best is
 * judged, and the others are alternatives.
 */
export function judge(
  around: Around,
  definite: DefiniteTarget,
  runs: readonly WorkedRun[],
  means: ReadonlyMap<number, AtPressure>,
): { criteria: WorkedCriterion[]; alternatives: WorkedCriterion[] } {
  const worked = definite.limits.map((rule, i) => judgeLimit(around, definite, runs, means, rule, i))
  if (definite.satisfiedBy === 'all') return { criteria: worked, alternatives: [] }
  const share = ({ value }: WorkedCriterion) => value.value('M_L')
  const [best, ...alternatives] = worked.sort((a, b) => share(b) - share(a))
  return { criteria: best ? [best] : [], alternatives }
}

function judgeLimit(
  around: Around,
  definite: DefiniteTarget,
  runs: readonly WorkedRun[],
  means: ReadonlyMap<number, AtPressure>,
  rule: LimitRule,
  i: number,
): WorkedCriterion {
  const { calculation, bases } = around
  const { quantity, referencePressure_Pa } = rule
  const id = `target${i + 1}`
  const named = limitedName(quantity, referencePressure_Pa)
  const counted = countedValue(rule, definite.target.directions === 'each' ? runs : [], means)
  const L = byRule(rule.limit, 'limit of the target')
  const { value, limitBefore } = asJudged(around, id, definite, counted.value, L)
  const B = basisValue(bases, rule)
  const dp_r = byRule(referencePressure_Pa, 'reference pressure')
  const ofArea = basisOf(quantity) === 'aE'
  // What leaks in fact is above the limit before factors and rounding.
  const excess = { v: counted.value, L: limitBefore, B, dp_r }
  return {
    quantity,
    referencePressure_Pa,
    judged: counted.judged ?? (runs.length === 1 ? 'one direction' : 'mean'),
    value: calculation.add(id, `Against the target: ${named}`, comparison, { v: value, L }),
    limitBefore,
    flow: ofArea
      ? calculation.add(`${id}.flow`, `Flow at the limit: ${named}`, flowThroughAllowedArea, {
          L: limitBefore,
          B,
          dp_r,
        })
      : calculation.add(`${id}.flow`, `Flow at the limit: ${named}`, allowedLeakage, {
          L: limitBefore,
          B,
        }),
    toSeal: ofArea
      ? calculation.add(`${id}.seal`, `Leakage area to seal: ${named}`, areaToSeal, excess)
      : calculation.add(`${id}.seal`, `Leakage to seal: ${named}`, leakageToSeal, excess),
    ageing: publishedAgeing.map(({ growth }, year) =>
      calculation.add(`${id}.age${year + 1}`, `After ageing by ${growth * 100} %: ${named}`, ageing, {
        v: value,
        L,
        g: byRule(growth, 'published growth of leakage'),
      }),
    ),
  }
}

/** The value with what the target or the method does to it before it is compared: factors first, then rounding. */
function asJudged(
  { calculation, method }: Around,
  id: string,
  { target, sampling }: DefiniteTarget,
  counted: Given,
  L: Given,
): { value: Given; limitBefore: Given } {
  let value = counted
  let factor = 1
  if (method.judgesExtended) {
    value = calculation
      .add(`${id}.extended`, 'Extended for the comparison', extendedValue, { v_u: value })
      .ref('v')
    factor *= constantValue('k_ext')
  }
  if (sampling) {
    const k_s = byRule(sampling.factor, 'factor of the scheme for a sample')
    value = calculation.add(`${id}.sample`, 'Factor for a sample', sampledValue, { v_u: value, k_s }).ref('v')
    factor *= sampling.factor
  }
  const { decimalPlaces: places } = target
  value = rounded(calculation, id, value, places)
  if (factor === 1 && places === undefined) return { value, limitBefore: L }
  const half = places === undefined ? 0 : 0.5 * 10 ** -places
  // A limit of 2.03 compared to one place is met up to 2.0: what rounds to 2.1 is above it.
  const met =
    places === undefined
      ? L
      : calculation
          .add(`${id}.places`, 'Limit to the places of the target', limitOfPlaces, { L, k: placesOf(places) })
          .ref('L_k')
  return {
    value,
    limitBefore: calculation
      .add(`${id}.before`, 'Limit before factors and rounding', limitBeforeChapter, {
        L: met,
        h_k: byRule(half, 'half of the last place of the target'),
        k_v: byRule(factor, 'factors on the value'),
      })
      .ref('L_m'),
  }
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
  const values = each.map(({ at }) => countedAt(at.get(rule.referencePressure_Pa), rule))
  const [first, second] = values
  if (first && second)
    return { value: second.value > first.value ? second : first, judged: 'worse direction' }
  return { value: countedAt(means.get(rule.referencePressure_Pa), rule) }
}

/** What a limit is set on, at its reference pressure. */
export function countedAt(
  found: AtPressure | undefined,
  { quantity, referencePressure_Pa }: LimitRule,
): Given {
  const basis = basisOf(quantity)
  const block: Block<Counts> | undefined =
    basis === 'q' ? found?.rate : basis === 'aE' ? found?.area : found?.derived
  if (!block) throw new RangeError(`nothing calculated at ${referencePressure_Pa} Pa`)
  return block.ref(symbols[basis])
}

const placesOf = (places: number): Given => byRule(places, 'decimal places of the target')

function rounded(calculation: Calculation, id: string, value: Given, places: number | undefined): Given {
  if (places === undefined) return value
  return calculation
    .add(`${id}.rounded`, 'Rounding required by the target', roundedValue, {
      v_u: value,
      k: placesOf(places),
    })
    .ref('v')
}

/** What the quantity of a limit is related to. */
export function basisValue(bases: Bases, { quantity }: LimitRule): Given {
  const { V, A_E, A_F, A_T } = bases
  const basis = { n: V, qE: A_E, qF: A_F, qT: A_T, aE: A_E, q: undefined }[basisOf(quantity)]
  return basis ?? byRule(1, 'the target limits the air flow itself')
}
