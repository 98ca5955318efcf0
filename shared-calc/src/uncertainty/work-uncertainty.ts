import { results } from '../catalogue/figures.js'
import type { TestRecord } from '../contract/record/index.js'
import type { WorkedTest } from '../evaluation/work/worked-test.js'
import { leakMixture } from '../formulas/uncertainty-leaks.js'
import { stackUncertainty, windUncertainty } from '../formulas/uncertainty-weather.js'
import type { Method } from '../methods/method.js'
import type { SharedUncertainty } from './budget-rows.js'
import { workDecisions } from './decisions.js'
import { UncertaintyReader } from './inputs.js'
import {
  airSensitivities,
  mainRange,
  type RunUncertainty,
  workRunUncertainty,
  workZeroFlowChange,
} from './run-sensitivity.js'
import { type Wanted, workBudget } from './work-budget.js'
import { workFits } from './work-fits.js'
import { refuseBeyondMeasure, type WorkedBudget, type WorkedUncertainty } from './worked-uncertainty.js'

const basisOfResult = { q50: 'q', n50: 'n', qE50: 'qE', qF50: 'qF', ela4: 'area', ela10: 'area' } as const

/** The figures that get a budget. */
const reported = (['q50', 'n50', 'qE50', 'qF50', 'ela4', 'ela10'] as const).map((quantity) => ({
  quantity,
  label: results[quantity].short,
  pressure: results[quantity].at_Pa,
  basis: basisOfResult[quantity],
  unit: results[quantity].unit,
}))

/** What every budget of a test is made of, and its runs. */
interface BudgetParts {
  readonly shared: SharedUncertainty
  readonly runs: readonly RunUncertainty[]
  readonly windAssumed: boolean
  readonly heightAssumed: boolean
}

/** Weather, openings, instruments and readings of a test, as far as they make its figures uncertain. */
function workParts(record: TestRecord, method: Method, test: WorkedTest): BudgetParts {
  const { calculation } = test
  const reader = new UncertaintyReader(calculation, record, test.runs, method)
  const speed = reader.wind()
  const wind = calculation.add('uncertainty.wind', 'Uncertainty from wind', windUncertainty, {
    U_w: speed,
    k_w: reader.read('windShift'),
    k_s: reader.read('windSpread'),
  })
  const height = reader.height()
  const stack = calculation.add(
    'uncertainty.stack',
    'Uncertainty from the stack pressure',
    stackUncertainty,
    {
      rho_i: test.indoor.ref('rho'),
      rho_e: test.outdoor.ref('rho'),
      h_b: height,
      k_t: reader.read('stackShift'),
      k_h: reader.read('stackSpread'),
    },
  )
  const leaks = calculation.add('uncertainty.leaks', 'Openings of unlike exponents', leakMixture, {
    s_l: reader.read('leakExponentSpread'),
  })
  const around = {
    ...airSensitivities(calculation, test),
    wind,
    zeroFlowChange: workZeroFlowChange(calculation, test.runs),
    mainRange: mainRange(record.runs),
  }
  const runs = test.runs.flatMap((run) => {
    const logged = record.runs[run.index]
    return logged ? [workRunUncertainty(calculation, method, reader, around, run, logged)] : []
  })
  return {
    shared: {
      calculation,
      reader,
      wind,
      stack,
      leaks,
      otherDirectionMissing: runs.length === 1 && test.target?.target.directions !== 'any',
    },
    runs,
    windAssumed: speed.origin.kind === 'assumed',
    heightAssumed: height.origin.kind === 'assumed',
  }
}

/**
 * Budgets of q50 and n50 alone, for a test under way; undefined for a figure that the test does not give.
 * @throws UnboundedUncertainty where no bounds can be set
 */
export function workBudgetsSoFar(
  record: TestRecord,
  method: Method,
  test: WorkedTest,
): { readonly q50: WorkedBudget | undefined; readonly n50: WorkedBudget | undefined } {
  const before = test.calculation.blocks.length
  const { shared, runs } = workParts(record, method, test)
  const [q50, n50] = (['q50', 'n50'] as const).map((quantity) => {
    const wanted = reported.find((one) => one.quantity === quantity)
    return wanted && workBudget(shared, test, runs, wanted)
  })
  refuseBeyondMeasure(test.calculation.blocks.slice(before))
  return { q50, n50 }
}

/** Works out budgets, decisions and further fits of a test, as blocks behind its own. */
export function workUncertainty(record: TestRecord, method: Method, test: WorkedTest): WorkedUncertainty {
  const { calculation } = test
  const before = calculation.blocks.length
  const { shared, runs, windAssumed, heightAssumed } = workParts(record, method, test)
  const { reader } = shared
  const budgetOf = (over: readonly RunUncertainty[], what: Wanted) => workBudget(shared, test, over, what)
  const budgets = reported.flatMap((what) => budgetOf(runs, what) ?? [])
  const decisions = workDecisions(calculation, reader, test.criteria, runs, { known: budgets, budgetOf })
  const fits = runs.map((run) => workFits(calculation, run))
  refuseBeyondMeasure(calculation.blocks.slice(before))
  return {
    budgets: [...new Set([...budgets, ...decisions.flatMap(({ budget, others }) => [budget, ...others])])],
    decisions,
    fits,
    runs,
    defaults: [...reader.defaults.values()],
    windAssumed,
    heightAssumed,
    windFromStation: calculation.find('uncertainty.windAtHouse'),
  }
}
