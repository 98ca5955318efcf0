import { type Block, columnOf, type Given } from '../engine/index.js'
import type { basisOf } from '../evaluation/work/definite-target.js'
import type { AtPressure, WorkedTest } from '../evaluation/work/worked-test.js'
import { uncertaintyBudget } from '../formulas/uncertainty-budget.js'
import { budgetRows, type SharedUncertainty } from './budget-rows.js'
import type { RunUncertainty } from './run-sensitivity.js'
import type { WorkedBudget } from './worked-uncertainty.js'

type Basis = ReturnType<typeof basisOf>

const symbols = {
  q: 'q_pr',
  n: 'n_pr',
  qE: 'q_E',
  qF: 'q_F',
  qT: 'q_T',
  aE: 'A_N',
  area: 'A_L',
} as const

/** A figure whose budget is wanted. */
export interface Wanted {
  readonly quantity: string
  /** The quantity where absent. */
  readonly label?: string
  readonly pressure: number
  readonly basis: Basis | 'area'
  readonly unit: string
  readonly id?: string
}

/** The budget of a figure; undefined where the test does not give the figure. */
export function workBudget(
  shared: SharedUncertainty,
  test: WorkedTest,
  runs: readonly RunUncertainty[],
  { quantity, pressure, basis, unit, label = quantity, id = quantity }: Wanted,
): WorkedBudget | undefined {
  const [only] = runs
  const at = runs.length === 1 && only ? only.run.at.get(pressure) : test.means.get(pressure)
  const value = figureValue(at, basis)
  if (!value) return undefined
  const rows = budgetRows(shared, runs, pressure, basis)
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
  const block: Block<string> | undefined =
    basis === 'q' || basis === 'area' ? at?.rate : basis === 'aE' ? at?.area : at?.derived
  return block?.has(symbols[basis]) ? block.ref(symbols[basis]) : undefined
}
