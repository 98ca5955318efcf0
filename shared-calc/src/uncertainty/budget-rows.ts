import { type Block, type BlockOf, byRule, type Calculation, columnOf, type Given } from '../engine/index.js'
import type { AtPressure } from '../evaluation/work/worked-test.js'
import { meanSensitivity } from '../formulas/uncertainty-budget.js'
import type { leakMixture } from '../formulas/uncertainty-leaks.js'
import type { stackUncertainty, windUncertainty } from '../formulas/uncertainty-weather.js'
import { type CauseId, cause, causeIds, causeOfBasis } from './causes.js'
import type { UncertaintyReader } from './inputs.js'
import type { RunUncertainty } from './run-sensitivity.js'
import type { BudgetRow } from './worked-uncertainty.js'

type MeanBlock = BlockOf<typeof meanSensitivity>

const none = byRule(0, 'not found from scatter')
const eitherWay = byRule(0, 'may lie either way')

/** What the budgets of a test share: its weather and openings, and what the record says about its inputs. */
export interface SharedUncertainty {
  readonly calculation: Calculation
  readonly reader: UncertaintyReader
  readonly wind: BlockOf<typeof windUncertainty>
  readonly stack: BlockOf<typeof stackUncertainty>
  readonly leaks: BlockOf<typeof leakMixture>
  /** Whether the figure stands for both directions though one was run. */
  readonly otherDirectionMissing: boolean
}

/**
 * The rows of the budget of a figure, for the mean over some runs: what all readings share first, then what each run has
 * of its own, then what the figure is related to.
 */
export function budgetRows(
  shared: SharedUncertainty,
  runs: readonly RunUncertainty[],
  pressure_Pa: number,
  basis: string,
): readonly BudgetRow[] {
  const mean = meanBlock(shared.calculation, runs, pressure_Pa)
  const ofFigure = new Set<CauseId>(Object.values(causeOfBasis))
  const [common, ofRuns, last] = [
    causeIds.filter((id) => cause(id).scope === 'shared' && id !== 'other direction' && !ofFigure.has(id)),
    causeIds.filter((id) => cause(id).scope === 'run'),
    [
      ...(shared.otherDirectionMissing ? (['other direction'] as const) : []),
      ...(basis in causeOfBasis ? [causeOfBasis[basis as keyof typeof causeOfBasis]] : []),
    ],
  ]
  return [
    ...common.flatMap((id) => sharedRow(shared, mean, id) ?? []),
    ...runs.flatMap((run, i) => ofRuns.map((id) => runRow(mean, run, i, id, pressure_Pa))),
    ...last.flatMap((id) => sharedRow(shared, mean, id) ?? []),
  ]
}

/** Left out where the method has no such sensitivity. */
function sharedRow(shared: SharedUncertainty, mean: MeanBlock, id: CauseId): BudgetRow | undefined {
  const { sensitivity, size, name, unit, input } = cause(id)
  if ('ofRun' in sensitivity || 'ofRun' in size) throw new RangeError(`${id} is a cause of each run`)
  if ('mean' in sensitivity && !mean.has(sensitivity.mean)) return undefined
  const c = 'mean' in sensitivity ? mean.ref(sensitivity.mean) : byRule(sensitivity.fixed, sensitivity.why)
  const a = 'expected' in size ? weatherOf(shared, size.block).ref(size.expected) : eitherWay
  return { cause: id, id, name, unit, ...(input && { input }), c, u: sizeOf(shared, size), a, r: none }
}

/** The block that a shared cause takes its size from; the table of causes names its symbols. */
const weatherOf = (shared: SharedUncertainty, block: 'wind' | 'stack' | 'leaks'): Block<string> =>
  shared[block]

function sizeOf(
  shared: SharedUncertainty,
  size: Exclude<ReturnType<typeof cause>['size'], { ofRun: unknown }>,
): Given {
  const { reader } = shared
  if ('input' in size) return reader.read(size.input)
  if ('fixed' in size) return byRule(size.fixed, size.why)
  if ('block' in size) return weatherOf(shared, size.block).ref(size.u)
  switch (size.logged) {
    case 'barometer':
      return reader.barometer()
    case 'volume':
      return reader.volume()
    default:
      return reader.humidity(size.logged === 'indoor humidity' ? 'indoor' : 'outdoor')
  }
}

function runRow(
  mean: MeanBlock,
  { run, zeroFlow, sensitivityAt }: RunUncertainty,
  i: number,
  id: CauseId,
  pressure_Pa: number,
): BudgetRow {
  const { sensitivity, size, name, unit, input } = cause(id)
  if (!('ofRun' in sensitivity && 'ofRun' in size)) throw new RangeError(`${id} is a cause of the whole test`)
  const readings = size.ofRun === 'readings'
  const from: Block<string> = readings ? sensitivityAt(pressure_Pa) : zeroFlow
  return {
    cause: id,
    id: `${id} ${run.index + 1}`,
    name: `${name}, ${run.direction}`,
    unit,
    ...(input && { input }),
    run: run.index,
    c: mean.refRow(sensitivity.ofRun, i),
    u: from.ref(readings ? 'u_r' : 'u_0'),
    a: readings && from.has('b_r') ? from.ref('b_r') : eitherWay,
    r: from.ref(readings ? 'r_r' : 'r_0'),
  }
}

function meanBlock(
  calculation: Calculation,
  runs: readonly RunUncertainty[],
  pressure_Pa: number,
): MeanBlock {
  const which = runs.map(({ run }) => run.index + 1).join('')
  const id = `uncertainty.mean${which}.at${pressure_Pa}`
  const known = calculation.find(id)
  if (known) return known
  const blocks = runs.map(({ run, sensitivityAt }) => ({ run, block: sensitivityAt(pressure_Pa) }))
  /** One value a run; left out where a run lacks it. */
  const column = (symbol: (depressurising: boolean) => string) => {
    const given = blocks.flatMap(({ run, block }) => {
      const name = symbol(run.direction === 'depressurisation')
      return block.has(name) ? [block.ref(name)] : []
    })
    return given.length === blocks.length ? columnOf(given) : undefined
  }
  // What another meaning of the typed flows would change, where nobody said which holds; 0 for a run that says it.
  const meanings = runs.map(({ run }) => run.flows.otherMeaning)
  // Depressurising, indoor air goes through the device and outdoor air through the leaks; pressurising, the reverse.
  const indoors = (quantity: string) => column((out) => `s_${quantity}${out ? 'd' : 'x'}`)
  const outdoors = (quantity: string) => column((out) => `s_${quantity}${out ? 'x' : 'd'}`)
  return calculation.add(id, `Sensitivities of the mean at ${pressure_Pa} Pa`, meanSensitivity, {
    q_r: columnOf(runs.map(({ run }) => rateRef(run.at.get(pressure_Pa)?.rate, pressure_Pa))),
    s_0: column(() => 's_0'),
    s_r: column(() => 's_r'),
    s_g: column(() => 's_g'),
    s_w: column(() => 's_w'),
    s_v: column(() => 's_v'),
    s_m: column(() => 's_m'),
    s_p: column(() => 's_p'),
    s_n: column(() => 's_n'),
    f_s: meanings.some(Boolean)
      ? columnOf(meanings.map((one) => one ?? byRule(0, 'said in the record')))
      : undefined,
    s_Ti: indoors('T'),
    s_Te: outdoors('T'),
    s_hi: indoors('h'),
    s_he: outdoors('h'),
  })
}

function rateRef(rate: AtPressure['rate'] | undefined, pressure_Pa: number): Given {
  if (!rate) throw new RangeError(`nothing calculated at ${pressure_Pa} Pa`)
  return rate.ref('q_pr')
}
