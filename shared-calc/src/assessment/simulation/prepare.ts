import type { TestRecord } from '../../contract/record/index.js'
import type { BudgetRow } from '../../uncertainty/worked-uncertainty.js'
import { evaluateWorked } from '../evaluate.js'
import { BATCH } from './batch-value.js'
import { perturbRun } from './perturb-run.js'
import type { Random } from './random.js'
import { type Handle, Replay } from './replay.js'

export interface PreparedFigure {
  readonly quantity: string
  readonly unit: string
  readonly value: number
  readonly limit?: number
  /** The figure in one draw of the batch. */
  readonly at: (draw: number) => number
}

/** A test ready to be drawn: `draw` changes all inputs of a batch and works everything out again. */
export interface PreparedTest {
  readonly figures: readonly PreparedFigure[]
  readonly draw: (random: Random) => void
}

/** Makes a test ready to be drawn, from its budget. Throws InputError as evaluate does. */
export function prepare(record: TestRecord): PreparedTest {
  const { test } = evaluateWorked(record, { uncertainty: true })
  const { uncertainty } = test
  if (!uncertainty) throw new RangeError('the test has no uncertainty budget')
  const { budgets, runs, decisions } = uncertainty
  const outputs = budgets.map(({ block }) => {
    const v = block.input('v')
    const origin = v && 'value' in v ? v.origin : undefined
    if (origin?.kind !== 'block') throw new RangeError(`the value of ${block.id} comes from no block`)
    return { block: origin.block, symbol: origin.symbol }
  })
  const replay = new Replay(test.calculation, outputs)
  const rows = new Map(budgets.flatMap((budget) => budget.rows).map((row) => [row.id, row]))
  const blocks = test.calculation.blocks.map(({ id }) => id)
  const single = singleInputs(replay, blocks, rows)
  const perturb = runs.map((run) => perturbRun(replay, run))
  const normal = (cause: string) => {
    const u = rows.get(cause)?.u.value ?? 0
    const draws = new Float64Array(BATCH)
    const fill = (random: Random) => {
      if (u > 0) for (let i = 0; i < BATCH; i += 1) draws[i] = u * random.normal()
    }
    return { u, draws, fill }
  }
  const [flow, span] = [normal('flow calibration'), normal('gauge span')]
  const [windShift, windVariance, other] = [
    normal('wind shift'),
    normal('wind spread'),
    normal('other direction'),
  ]
  const shared = {
    flow: flow.draws,
    span: span.draws,
    windShift: windShift.draws,
    windVariance: windVariance.draws,
  }
  const figures = budgets.map(({ quantity, unit, block }, i): PreparedFigure => {
    const read = replay.reader(outputs[i] as (typeof outputs)[number])
    const one = typeof read === 'number' ? () => read : (draw: number) => read[draw] as number
    const judged = decisions.find((decision) => decision.budget.block === block)
    return {
      quantity,
      unit,
      value: block.value('v'),
      ...(judged && { limit: judged.block.value('L') }),
      at: other.u > 0 ? (draw) => one(draw) * Math.exp(other.draws[draw] as number) : one,
    }
  })
  return {
    figures,
    draw: (random) => {
      for (const { fill } of [flow, span, windShift, windVariance, other]) fill(random)
      for (const fill of single) fill(random)
      for (const fill of perturb) fill(shared, random)
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
      for (let i = 0; i < BATCH; i += 1) {
        const error = u * random.normal()
        for (const { nominal, draws } of used)
          draws[i] = relative ? nominal * Math.exp(error) : nominal + error
      }
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
