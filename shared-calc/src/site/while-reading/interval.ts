import type { Run } from '../../contract/record/index.js'
import { Calculation, columnOf, type Given } from '../../engine/index.js'
import { type RunSurroundings, workRun } from '../../evaluation/work/run.js'
import { ASSUMED_EXPONENT } from '../../evaluation/work/running-estimate.js'
import type { WorkedRun, WorkedTest } from '../../evaluation/work/worked-test.js'
import { standardAir } from '../../formulas/standard-air.js'
import { intervalOfFewReadings } from '../../formulas/while-reading.js'
import { onePoint } from '../../methods/curve-chapters.js'
import type { Method } from '../../methods/method.js'
import { workBudgetsSoFar } from '../../uncertainty/work-uncertainty.js'
import { UnboundedUncertainty, type WorkedBudget } from '../../uncertainty/worked-uncertainty.js'

/** A figure while readings come in. */
type Quantity = 'q50' | 'n50'

/** Interval of a figure so far; undefined where the test does not give the figure. */
export type IntervalOf = (quantity: Quantity, soFar: Given) => { lower: number; upper: number } | undefined

/**
 * Intervals of the whole uncertainty budget of a run under way: instruments, wind, stack pressure, the direction still to
 * come. Undefined where no bounds can be set.
 */
export function intervalOfFit(around: RunSurroundings, worked: WorkedRun): IntervalOf | undefined {
  const budgets = budgetsOf(around, worked)
  return (
    budgets &&
    ((quantity) => {
      const block = budgets[quantity]?.block
      return block && { lower: block.value('v_lo'), upper: block.value('v_hi') }
    })
  )
}

/** The same while readings are too few for a fit: what each reading says alone, taken together. */
export function intervalOfFew(around: RunSurroundings, run: Run): IntervalOf | undefined {
  const single = run.readings.map((reading) => {
    const alone = { ...run, readings: [reading] }
    const apart: RunSurroundings = {
      ...around,
      calculation: new Calculation(),
      record: { ...around.record, runs: [alone] },
      method: withAssumedExponent(around.method),
    }
    return budgetsOf(apart, workRun(apart, alone, 0))
  })
  if (single.some((budgets) => budgets === undefined)) return undefined
  return (quantity, soFar) => {
    const blocks = single.flatMap((budgets) => budgets?.[quantity]?.block ?? [])
    if (blocks.length < run.readings.length) return undefined
    const column = (symbol: 'v' | 'v_lo' | 'v_hi') => columnOf(blocks.map((block) => block.ref(symbol)))
    const ends = around.calculation.add(
      `run1.interval.${quantity}`,
      `interval of ${quantity}`,
      intervalOfFewReadings,
      { v_s: soFar, v: column('v'), v_lo: column('v_lo'), v_hi: column('v_hi') },
    )
    return { lower: ends.value('s_lo'), upper: ends.value('s_hi') }
  }
}

/** One reading is a test of one point, the exponent assumed. */
const withAssumedExponent = (method: Method): Method => ({
  ...method,
  formulas: { ...onePoint, standard: standardAir },
  assumedExponent: {
    value: ASSUMED_EXPONENT,
    source: { text: 'ASTM E1827, one-point test', seen: 'memory' },
  },
})

function budgetsOf(
  around: RunSurroundings,
  worked: WorkedRun,
): Readonly<Record<Quantity, WorkedBudget | undefined>> | undefined {
  const { calculation, indoor, outdoor } = around
  const test: WorkedTest = {
    calculation,
    indoor,
    outdoor,
    runs: [worked],
    means: new Map(),
    steps: [],
    stack: undefined,
    reported: undefined,
    target: undefined,
    criteria: [],
    alternatives: [],
  }
  try {
    return workBudgetsSoFar(around.record, around.method, test)
  } catch (error) {
    if (error instanceof UnboundedUncertainty) return undefined
    throw error
  }
}
