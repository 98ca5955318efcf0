import { conformity, uncertaintyBudget } from '../formulas/uncertainty-budget.js'
import { leakMixture } from '../formulas/uncertainty-leaks.js'
import { stackUncertainty, windUncertainty } from '../formulas/uncertainty-weather.js'
import type { Method } from '../methods/method.js'
import type { TargetQuantity, TestRecord } from '../record/index.js'
import { type Block, byRule, type Calculation, columnOf, type Given } from '../sheet/index.js'
import { basisOf, unitOf } from '../work/definite-target.js'
import type { AtPressure, WorkedCriterion, WorkedTest } from '../work/worked-test.js'
import { budgetRows, type SharedUncertainty } from './budget-rows.js'
import { UncertaintyReader } from './inputs.js'
import { refuseBeyondMeasure } from './refuse-beyond-measure.js'
import {
  airSensitivities,
  type RunUncertainty,
  workRunUncertainty,
  workZeroFlowChange,
} from './run-sensitivity.js'
import { workFits } from './work-fits.js'
import type { WorkedBudget, WorkedDecision, WorkedUncertainty } from './worked-uncertainty.js'

type Basis = ReturnType<typeof basisOf>

const reported = [
  { quantity: 'q50', pressure: 50, basis: 'q', unit: 'm3/h' },
  { quantity: 'n50', pressure: 50, basis: 'n', unit: '1/h' },
  { quantity: 'qE50', pressure: 50, basis: 'qE', unit: 'm3/(h·m2)' },
  { quantity: 'qF50', pressure: 50, basis: 'qF', unit: 'm3/(h·m2)' },
  { quantity: 'ela4', pressure: 4, basis: 'area', unit: 'cm2' },
  { quantity: 'ela10', pressure: 10, basis: 'area', unit: 'cm2' },
] as const

const symbols = { q: 'q_pr', n: 'n_pr', qE: 'q_E', qF: 'q_F', area: 'A_L' } as const

/** Works out budgets, decisions and further fits of a test, as blocks behind its own. */
export function workUncertainty(record: TestRecord, method: Method, test: WorkedTest): WorkedUncertainty {
  const { calculation } = test
  const before = calculation.blocks.length
  const reader = new UncertaintyReader(calculation, record)
  const speed = reader.wind()
  const wind = calculation.add('uncertainty.wind', 'Uncertainty from wind', windUncertainty, {
    U_w: speed,
    k_w: reader.read('windShift'),
    k_s: reader.read('windSpread'),
  })
  const height = reader.height()
  const stack = calculation.add('uncertainty.stack', 'Uncertainty from the stack pressure', stackUncertainty, {
    rho_i: test.indoor.ref('rho'),
    rho_e: test.outdoor.ref('rho'),
    h_b: height,
    k_t: reader.read('stackShift'),
    k_h: reader.read('stackSpread'),
  })
  const leaks = calculation.add('uncertainty.leaks', 'Openings of unlike exponents', leakMixture, {
    s_l: reader.read('leakExponentSpread'),
  })
  const around = {
    ...airSensitivities(calculation, test),
    wind,
    zeroFlowChange: workZeroFlowChange(calculation, test.runs),
  }
  const runs = test.runs.flatMap((run) => {
    const logged = record.runs[run.index]
    return logged ? [workRunUncertainty(calculation, method, reader, around, run, logged)] : []
  })
  const shared: SharedUncertainty = {
    calculation,
    reader,
    wind,
    stack,
    leaks,
    otherDirectionMissing: runs.length === 1 && test.target?.target.directions !== 'any',
  }
  const budgetOf = (over: readonly RunUncertainty[], what: Wanted) => workBudget(shared, test, over, what)
  const budgets = reported.flatMap((what) => budgetOf(runs, what) ?? [])
  const decisions = test.criteria.flatMap((criterion, i) => {
    const over = judgedRuns(criterion, runs)
    const { quantity, referencePressure_Pa: pressure } = criterion
    const known = budgets.find((budget) => budget.quantity === quantity)
    const budget =
      (over.length === runs.length && known) ||
      budgetOf(over, {
        quantity,
        pressure,
        basis: basisOf(quantity),
        unit: unitOf(quantity),
        id: `target${i + 1}`,
      })
    return budget ? [workDecision(calculation, reader, criterion, budget, i)] : []
  })
  const fits = runs.map((run) => workFits(calculation, run))
  refuseBeyondMeasure(calculation.blocks.slice(before))
  return {
    budgets: [...budgets, ...decisions.flatMap(({ budget }) => (budgets.includes(budget) ? [] : [budget]))],
    decisions,
    fits,
    runs,
    defaults: [...reader.defaults.values()],
    windAssumed: speed.origin.kind === 'assumed',
    heightAssumed: height.origin.kind === 'assumed',
    windFromStation: calculation.find('uncertainty.windAtHouse'),
  }
}

interface Wanted {
  readonly quantity: string
  readonly pressure: number
  readonly basis: Basis | 'area'
  readonly unit: string
  readonly id?: string
}

function workBudget(
  shared: SharedUncertainty,
  test: WorkedTest,
  runs: readonly RunUncertainty[],
  { quantity, pressure, basis, unit, id = quantity }: Wanted,
): WorkedBudget | undefined {
  const [only] = runs
  const at = runs.length === 1 && only ? only.run.at.get(pressure) : test.means.get(pressure)
  const value = figureValue(at, basis)
  if (!value) return undefined
  const rows = budgetRows(shared, runs, pressure, basis)
  const label = `${quantity}${id === quantity ? '' : ' as judged'}`
  const block = shared.calculation.add(
    `uncertainty.${id}`,
    `Uncertainty budget: ${label}`,
    uncertaintyBudget,
    {
      v: value,
      c: columnOf(rows.map(({ c }) => c)),
      u: columnOf(rows.map(({ u }) => u)),
      a: columnOf(rows.map(({ a }) => a)),
      r: columnOf(rows.map(({ r }) => r)),
    },
  )
  return { quantity, label, unit, referencePressure_Pa: pressure, rows, block }
}

function figureValue(at: AtPressure | undefined, basis: Wanted['basis']): Given | undefined {
  const block: Block | undefined = basis === 'q' || basis === 'area' ? at?.rate : at?.derived
  return block?.has(symbols[basis]) ? block.ref(symbols[basis]) : undefined
}

/** The runs a criterion was judged on: all of them, or the one with the larger leakage rate. */
function judgedRuns(criterion: WorkedCriterion, runs: readonly RunUncertainty[]): readonly RunUncertainty[] {
  if (criterion.judged !== 'worse direction') return runs
  const rate = ({ run }: RunUncertainty) =>
    run.at.get(criterion.referencePressure_Pa)?.rate.value('q_pr') ?? 0
  return [runs.reduce((worse, run) => (rate(run) > rate(worse) ? run : worse))]
}

function workDecision(
  calculation: Calculation,
  reader: UncertaintyReader,
  { quantity, referencePressure_Pa, value }: WorkedCriterion,
  budget: WorkedBudget,
  i: number,
): WorkedDecision {
  const block = calculation.add(
    `uncertainty.decision${i + 1}`,
    `How sure the target is met: ${quantity}`,
    conformity,
    {
      v: budget.block.input('v'),
      L: value.input('L'),
      u_c: budget.block.ref('u_c'),
      b: budget.block.ref('b'),
      nu_e: budget.block.ref('nu_e'),
      r_a: reader.read('acceptedRisk'),
      N_m: byRule(1, 'one limit'),
    },
  )
  return { quantity: quantity satisfies TargetQuantity, referencePressure_Pa, budget, block }
}
