import { InputError } from '../contract/problem.js'
import type { TestRecord } from '../contract/record/index.js'
import { byRule, Calculation, type Column } from '../engine/index.js'
import { uncertaintyOfChange } from '../formulas/uncertainty-budget.js'
import { cause, causeIds } from '../uncertainty/causes.js'
import { probabilityText } from '../uncertainty/words.js'
import type { WorkedBudget } from '../uncertainty/worked-uncertainty.js'
import { evaluateWorked } from './evaluate.js'

/** What changed between two tests of one house, and how sure that is. */
export interface LeakageChange {
  readonly quantity: string
  readonly before: number
  readonly after: number
  readonly unit: string
  /** Relative change, −0.2 for a fifth less, with its 95 % interval. */
  readonly change: number
  readonly interval95: readonly [number, number]
  /** Standard uncertainty of the logarithm of the ratio; without what both tests share it would be larger. */
  readonly standardUncertainty: number
  readonly probabilityOfFall: number
  /** Names of the causes that both tests share and that cancel as far as they act alike. */
  readonly shared: readonly string[]
  readonly words: string
}

/**
 * The change of a figure between two tests of one house. Volume and areas are shared where both records hold the same;
 * an instrument's calibration is shared where both name its serial number and due date alike.
 * @throws InputError where one of the tests does not give the figure
 */
export function changeBetween(first: TestRecord, second: TestRecord, quantity = 'q50'): LeakageChange {
  const [a, b] = [budgetOf(first, quantity), budgetOf(second, quantity)]
  const shared = sharedCauses(first, second)
  const ids = [...new Set([...a.rows, ...b.rows].flatMap(({ id, run }) => (run === undefined ? [id] : [])))]
  const own = (budget: WorkedBudget) =>
    budget.rows.flatMap(({ id, run }, i) => (run === undefined ? [] : [{ id, i }]))
  const [ownA, ownB] = [own(a), own(b)]
  const signed = (budget: WorkedBudget, id: string): number => {
    const i = budget.rows.findIndex((row) => row.id === id)
    return i < 0 ? 0 : contribution(budget.block, i)
  }
  const rule = { kind: 'rule', reason: 'contribution from the budget of the test' } as const
  const column = (values: readonly number[]): Column => ({
    values,
    origin: () => rule,
  })
  const block = new Calculation().add('change', 'Change between two tests', uncertaintyOfChange, {
    v_a: byRule(a.block.value('v'), 'first test'),
    v_b: byRule(b.block.value('v'), 'second test'),
    c_a: column([
      ...ids.map((id) => signed(a, id)),
      ...ownA.map(({ i }) => contribution(a.block, i)),
      ...ownB.map(() => 0),
    ]),
    c_b: column([
      ...ids.map((id) => signed(b, id)),
      ...ownA.map(() => 0),
      ...ownB.map(({ i }) => contribution(b.block, i)),
    ]),
    s: column([...ids.map((id) => (shared.has(id) ? 1 : 0)), ...ownA.map(() => 0), ...ownB.map(() => 0)]),
  })
  const names = a.rows.flatMap(({ id, name }) => (shared.has(id) ? [name] : []))
  return {
    quantity,
    before: a.block.value('v'),
    after: b.block.value('v'),
    unit: a.unit,
    change: block.value('d_c'),
    interval95: [block.value('d_lo'), block.value('d_hi')],
    standardUncertainty: block.value('u_d'),
    probabilityOfFall: block.value('P_l'),
    shared: names,
    words: words(block.value('d_c'), block.value('P_l')),
  }
}

const contribution = (block: WorkedBudget['block'], i: number): number =>
  Math.sign(block.column('c')[i] as number) * (block.column('d')[i] as number)

function budgetOf(record: TestRecord, quantity: string): WorkedBudget {
  const { test } = evaluateWorked(record, { uncertainty: true })
  const found = test.uncertainty?.budgets.find((budget) => budget.quantity === quantity)
  if (found) return found
  throw new InputError([{ path: '', message: `test ${record.test.id ?? ''} has no ${quantity} to compare` }])
}

/** Causes that both tests share: an instrument of the same calibration, or the same house measured up. */
function sharedCauses(first: TestRecord, second: TestRecord): ReadonlySet<string> {
  const same = (what: NonNullable<ReturnType<typeof cause>['sharedWhereSame']>) => {
    if (what !== 'flowDevice' && what !== 'pressureGauge')
      return first.building[what] === second.building[what]
    const [a, b] = [first[what], second[what]]
    return a?.serial !== undefined && a.serial === b?.serial && a.calibrationDue === b.calibrationDue
  }
  return new Set(
    causeIds.filter((id) => {
      const { sharedWhereSame: what } = cause(id)
      return what !== undefined && same(what)
    }),
  )
}

function words(change: number, fell: number): string {
  const percent = `${Number(Math.abs(change * 100).toPrecision(2))} %`
  const sure = probabilityText(Math.max(fell, 1 - fell))
  if (Math.max(fell, 1 - fell) < 0.9)
    return `${percent} ${change < 0 ? 'less' : 'more'}, within the uncertainty of the two tests`
  return change < 0
    ? `leakage fell by ${percent} (probability of a real decrease: ${sure})`
    : `leakage rose by ${percent} (probability of a real increase: ${sure})`
}
