import { evaluateWorked } from '../evaluate.js'
import type { TestRecord } from '../record/index.js'
import type { BudgetRow } from '../uncertainty/worked-uncertainty.js'
import { perturbRun, type SharedDraw } from './perturb-run.js'
import { type Random, randomFrom } from './random.js'
import { type Handle, Replay } from './replay.js'
import { Sample, type SampleSummary } from './sample.js'

export interface SimulationOptions {
  readonly draws?: number
  readonly seed?: number
}

/** What the draws of one figure came to. */
export interface SimulatedFigure extends SampleSummary {
  readonly quantity: string
  readonly unit: string
  /** The figure as evaluated. */
  readonly value: number
  /** Probability that the true value meets the limit, where the figure is judged. */
  readonly probability?: number
}

export const SIMULATION_DRAWS = 100_000

/**
 * Monte Carlo through the formulas of the evaluation (JCGM 101:2008): every input is drawn from what the budget says of
 * it, and the whole calculation run again. Yields its progress, 0 to 1, so that the caller can show it, pause or stop;
 * returns the figures.
 * @throws InputError as evaluate does
 */
export function* simulate(
  record: TestRecord,
  { draws = SIMULATION_DRAWS, seed = 1 }: SimulationOptions = {},
): Generator<number, SimulatedFigure[]> {
  const test = prepare(record)
  const random = randomFrom(seed)
  const samples = test.figures.map(() => new Sample(draws))
  for (let draw = 0; draw < draws; draw += 1) {
    test.draw(random)
    for (let i = 0; i < samples.length; i += 1) samples[i]?.add(test.figures[i]?.read() ?? Number.NaN)
    if ((draw + 1) % PROGRESS_EVERY === 0) yield (draw + 1) / draws
  }
  return test.figures.map(({ quantity, unit, value, limit }, i) => {
    const sample = samples[i] as Sample
    return {
      quantity,
      unit,
      value,
      ...sample.summary(),
      ...(limit !== undefined && { probability: sample.shareUpTo(limit) }),
    }
  })
}

const PROGRESS_EVERY = 2000

interface PreparedFigure {
  readonly quantity: string
  readonly unit: string
  readonly value: number
  readonly limit?: number
  readonly read: () => number
}

/** A test ready to be drawn: `draw` changes all inputs once and works everything out again. */
export function prepare(record: TestRecord): {
  readonly figures: readonly PreparedFigure[]
  readonly draw: (random: Random) => void
} {
  const { test } = evaluateWorked(record, { uncertainty: true })
  const { uncertainty } = test
  if (!uncertainty) throw new RangeError('the test has no uncertainty budget')
  const { budgets, runs, decisions } = uncertainty
  const outputs = budgets.map(({ block }) => {
    const origin = block.bindings.v && 'value' in block.bindings.v ? block.bindings.v.origin : undefined
    if (origin?.kind !== 'block') throw new RangeError(`the value of ${block.id} comes from no block`)
    return { block: origin.block, symbol: origin.symbol }
  })
  const replay = new Replay(test.calculation, outputs)
  const rows = new Map(budgets.flatMap((budget) => budget.rows).map((row) => [row.id, row]))
  const uncertain = (id: string): number => rows.get(id)?.u.value ?? 0
  const single = singleInputs(
    replay,
    test.calculation.blocks.map(({ id }) => id),
    rows,
  )
  const perturb = runs.map((run) => perturbRun(replay, run))
  const shared: SharedDraw = { flow: 0, span: 0, windShift: 0, windVariance: 0 }
  const [u_flow, u_span] = [uncertain('flow calibration'), uncertain('gauge span')]
  const [u_shift, u_variance, u_other] = [
    uncertain('wind shift'),
    uncertain('wind spread'),
    uncertain('other direction'),
  ]
  let other = 1
  const figures = budgets.map(({ quantity, unit, block }, i): PreparedFigure => {
    const read = replay.reader(outputs[i] as (typeof outputs)[number])
    const judged = decisions.find((decision) => decision.budget.block === block)
    return {
      quantity,
      unit,
      value: block.value('v'),
      ...(judged && { limit: judged.block.value('L') }),
      read: u_other > 0 ? () => read() * other : read,
    }
  })
  return {
    figures,
    draw: (random) => {
      shared.flow = u_flow * random.normal()
      shared.span = u_span * random.normal()
      shared.windShift = u_shift * random.normal()
      shared.windVariance = u_variance * random.normal()
      if (u_other > 0) other = Math.exp(u_other * random.normal())
      for (const change of single) change(random)
      for (const change of perturb) change(shared, random)
      replay.run()
    },
  }
}

/** Inputs that one row of the budget moves by itself, wherever the calculation uses them. */
function singleInputs(
  replay: Replay,
  blocks: readonly string[],
  rows: ReadonlyMap<string, BudgetRow>,
): ((random: Random) => void)[] {
  const changes: ((random: Random) => void)[] = []
  const add = (cause: string, handles: readonly (Handle | undefined)[], relative = false) => {
    const u = rows.get(cause)?.u.value ?? 0
    const used = handles.flatMap((handle) => handle ?? [])
    if (u === 0 || used.length === 0) return
    changes.push((random) => {
      const error = u * random.normal()
      for (const { nominal, set } of used) set(relative ? nominal * Math.exp(error) : nominal + error)
    })
  }
  const everywhere = (symbol: string) => blocks.map((id) => replay.handle(id, symbol))
  add('indoor temperature', [replay.handle('air.indoor', 'theta')])
  add('outdoor temperature', [replay.handle('air.outdoor', 'theta')])
  add('indoor humidity', [replay.handle('air.indoor', 'phi')])
  add('outdoor humidity', [replay.handle('air.outdoor', 'phi')])
  add('barometer', [replay.handle('air.indoor', 'p_bar'), replay.handle('air.outdoor', 'p_bar')])
  add('assumed exponent', everywhere('n_a'))
  add('internal volume', everywhere('V'), true)
  add('envelope area', everywhere('A_E'), true)
  add('floor area', everywhere('A_F'), true)
  return changes
}
