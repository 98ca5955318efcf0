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
import { refuseBeyondMeasure, type WorkedUncertainty } from './worked-uncertainty.js'

const basisOfResult = { q50: 'q', n50: 'n', qE50: 'qE', qF50: 'qF', ela4: 'area', ela10: 'area' } as const

/** The figures that get a budget. */
const reported = (['q50', 'n50', 'qE50', 'qF50', 'ela4', 'ela10'] as const).map((quantity) => ({
  quantity,
  label: results[quantity].short,
  pressure: results[quantity].at_Pa,
  basis: basisOfResult[quantity],
  unit: results[quantity].unit,
}))

/** Works out budgets, decisions and further fits of a test, as blocks behind its own. */
export function workUncertainty(record: TestRecord, method: Method, test: WorkedTest): WorkedUncertainty {
  const { calculation } = test
  const before = calculation.blocks.length
  const reader = new UncertaintyReader(calculation, record, test.runs)
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
  const decisions = workDecisions(calculation, reader, test.criteria, runs, { known: budgets, budgetOf })
  const fits = runs.map((run) => workFits(calculation, run))
  refuseBeyondMeasure(calculation.blocks.slice(before))
  return {
    budgets: [...new Set([...budgets, ...decisions.flatMap(({ budget, others }) => [budget, ...others])])],
    decisions,
    fits,
    runs,
    defaults: [...reader.defaults.values()],
    windAssumed: speed.origin.kind === 'assumed',
    heightAssumed: height.origin.kind === 'assumed',
    windFromStation: calculation.find('uncertainty.windAtHouse'),
  }
}
