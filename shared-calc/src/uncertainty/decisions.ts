import type { TargetQuantity } from '../contract/record/index.js'
import { type BlockOf, byRule, type Calculation } from '../engine/index.js'
import { basisOf, unitOf } from '../evaluation/work/definite-target.js'
import type { WorkedCriterion } from '../evaluation/work/worked-test.js'
import { conformity } from '../formulas/uncertainty-budget.js'
import type { UncertaintyReader } from './inputs.js'
import { jointProbability, type LimitMet } from './joint.js'
import type { RunUncertainty } from './run-sensitivity.js'
import type { Wanted } from './work-budget.js'
import type { WorkedBudget, WorkedDecision } from './worked-uncertainty.js'

interface Budgets {
  readonly known: readonly WorkedBudget[]
  readonly budgetOf: (over: readonly RunUncertainty[], what: Wanted) => WorkedBudget | undefined
}

/**
 * How sure each limit of the target is met. Where each direction must meet it, all directions together; where the target
 * has several limits, all limits together beside each.
 */
export function workDecisions(
  calculation: Calculation,
  reader: UncertaintyReader,
  criteria: readonly WorkedCriterion[],
  runs: readonly RunUncertainty[],
  budgets: Budgets,
): WorkedDecision[] {
  const judged = criteria.map((criterion, i) => ({
    criterion,
    budgets: judgedBudgets(criterion, i, runs, budgets),
  }))
  const count = judged.reduce((sum, one) => sum + one.budgets.length, 0)
  const limits = judged.map(({ criterion, budgets: judgedOn }, i) => ({
    criterion,
    met: judgedOn.map(
      (budget, part): LimitMet => ({
        budget,
        decision: decide(
          calculation,
          reader,
          `uncertainty.decision${i + 1}${part === 0 ? '' : `.other${part}`}`,
          criterion,
          budget,
          count,
        ),
      }),
    ),
  }))
  const allMet =
    limits.length > 1
      ? jointProbability(
          calculation,
          'uncertainty.allLimits',
          'All limits of the target',
          limits.flatMap(({ met }) => met),
        )
      : undefined
  return limits.flatMap(({ criterion, met }, i) => {
    const [first, ...others] = met
    if (!first) return []
    const { quantity, referencePressure_Pa } = criterion
    return {
      quantity: quantity satisfies TargetQuantity,
      referencePressure_Pa,
      budget: first.budget,
      block: first.decision,
      within: criterion.value.value('M') >= 0,
      met: jointProbability(calculation, `uncertainty.each${i + 1}`, `${quantity} in each direction`, met),
      ...(allMet && { allMet }),
      others: others.map(({ budget }) => budget),
    }
  })
}

/** The budgets a criterion is judged on: of the mean; or of each direction, the one with the larger rate first. */
function judgedBudgets(
  { quantity, referencePressure_Pa: pressure, judged }: WorkedCriterion,
  i: number,
  runs: readonly RunUncertainty[],
  { known, budgetOf }: Budgets,
): WorkedBudget[] {
  const what = { quantity, pressure, basis: basisOf(quantity), unit: unitOf(quantity) }
  const label = `${quantity} as judged`
  if (judged !== 'worse direction') {
    const same = known.find((budget) => budget.quantity === quantity)
    return [same ?? budgetOf(runs, { ...what, label, id: `target${i + 1}` })].flatMap((one) => one ?? [])
  }
  const rate = ({ run }: RunUncertainty) => run.at.get(pressure)?.rate.value('q_pr') ?? 0
  return runs
    .toSorted((one, other) => rate(other) - rate(one))
    .flatMap(
      (run, part) =>
        budgetOf([run], {
          ...what,
          label: part === 0 ? label : `${quantity}, ${run.run.direction}`,
          id: `target${i + 1}${part === 0 ? '' : `.other${part}`}`,
        }) ?? [],
    )
}

/** @param together - number of limits and directions that must be met at once: the accepted risk is shared out evenly */
function decide(
  calculation: Calculation,
  reader: UncertaintyReader,
  id: string,
  { quantity, limitBefore }: WorkedCriterion,
  budget: WorkedBudget,
  together: number,
): BlockOf<typeof conformity> {
  return calculation.add(id, `Probability of meeting the target: ${quantity}`, conformity, {
    v: budget.block.input('v'),
    L: limitBefore,
    u_c: budget.block.ref('u_c'),
    b: budget.block.ref('b'),
    nu_e: budget.block.ref('nu_e'),
    r_a: reader.read('acceptedRisk'),
    N_m: byRule(together, 'limits and directions that must be met at once share the risk'),
  })
}
