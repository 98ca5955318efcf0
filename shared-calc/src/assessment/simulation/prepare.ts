import { InputError } from '../../contract/problem.js'
import type { TestRecord } from '../../contract/record/index.js'
import { cause, type Draw } from '../../uncertainty/causes.js'
import type { BudgetRow } from '../../uncertainty/worked-uncertainty.js'
import { evaluateWorked } from '../evaluate.js'
import { BATCH } from './batch-value.js'
import { CURVE_TOUCHES_AT_Pa, perturbRun } from './perturb-run.js'
import type { Random } from './random.js'
import { Replay } from './replay.js'

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
  if (!uncertainty)
    throw new InputError([{ path: 'runs', message: 'this test has no uncertainty to simulate' }])
  const { budgets, runs, decisions } = uncertainty
  const outputs = budgets.map(({ block }) => {
    const v = block.input('v')
    const origin = v && 'value' in v ? v.origin : undefined
    if (origin?.kind !== 'block') throw new RangeError(`the value of ${block.id} comes from no block`)
    return { block: origin.block, symbol: origin.symbol }
  })
  const replay = new Replay(test.calculation, outputs)
  const rows = budgets.flatMap((budget) => budget.rows)
  const drawn = new Map(rows.map((row) => [row.id, row]))
  const blocks = test.calculation.blocks.map(({ id }) => id)
  const single = [...drawn.values()].flatMap((row) => changedInput(replay, blocks, row) ?? [])
  const perturb = runs.map((run) => perturbRun(replay, run))
  const shared = {
    flows: new Errors(drawn, 'flows'),
    flowsOfOtherRanges: new Errors(drawn, 'flows of other ranges'),
    meaningOfFlows: new Errors(drawn, 'meaning of flows'),
    span: new Errors(drawn, 'span'),
    pressureShift: new Errors(drawn, 'pressure shift'),
    pressureVariance: new Errors(drawn, 'pressure variance'),
    curvature: new Errors(drawn, 'curvature'),
  }
  const figure = new Errors(drawn, 'figure')
  const draws = {
    flows: shared.flows.draws,
    flowsOfOtherRanges: shared.flowsOfOtherRanges.draws,
    meaningOfFlows: shared.meaningOfFlows.draws,
    span: shared.span.draws,
    pressureShift: shared.pressureShift.draws,
    pressureVariance: shared.pressureVariance.draws,
    curvature: shared.curvature.draws,
  }
  const corrections = runs.map(({ sensitivityAt }) => {
    const block = sensitivityAt(CURVE_TOUCHES_AT_Pa)
    return block.has('k_n') ? block.value('k_n') : 0
  })
  const correction = corrections.reduce((sum, one) => sum + one, 0) / corrections.length
  const figures = budgets.map(({ quantity, unit, referencePressure_Pa, block }, i): PreparedFigure => {
    const read = replay.reader(outputs[i] as (typeof outputs)[number])
    const one = typeof read === 'number' ? () => read : (draw: number) => read[draw] as number
    const judged = decisions.find((decision) => decision.budget.block === block)
    // Along the curve the exponent changes too, and with it the correction to reference air.
    const away = Math.log(referencePressure_Pa / CURVE_TOUCHES_AT_Pa)
    const bend = away ** 2 / 2 + away * correction
    return {
      quantity,
      unit,
      value: block.value('v'),
      ...(judged && { limit: judged.block.value('L') }),
      at: (draw) =>
        one(draw) * Math.exp((figure.draws[draw] as number) + bend * (draws.curvature[draw] as number)),
    }
  })
  return {
    figures,
    draw: (random) => {
      for (const errors of [...Object.values(shared), figure]) errors.fill(random)
      for (const fill of single) fill(random)
      for (const fill of perturb) fill(draws, random)
      replay.run()
    },
  }
}

/** The sum of what all causes of one kind are drawn as: about their expected size, each by its standard uncertainty. */
class Errors {
  readonly draws = new Float64Array(BATCH)
  private readonly expected: number
  private readonly u: number

  constructor(rows: ReadonlyMap<string, BudgetRow>, moves: Draw['moves']) {
    const own = [...rows.values()].filter((row) => cause(row.cause).draw.moves === moves)
    this.expected = own.reduce((sum, { a }) => sum + a.value, 0)
    this.u = Math.hypot(...own.map(({ u }) => u.value))
    this.draws.fill(this.expected)
  }

  fill({ normal }: Random): void {
    if (this.u > 0) for (let i = 0; i < BATCH; i += 1) this.draws[i] = this.expected + this.u * normal()
  }
}

/** An input that one row of the budget moves by itself, wherever the calculation uses it. */
function changedInput(
  replay: Replay,
  blocks: readonly string[],
  { cause: id, u: { value: u } }: BudgetRow,
): ((random: Random) => void) | undefined {
  const { draw } = cause(id)
  if (draw.moves !== 'input' || u === 0) return undefined
  const used = (draw.blocks ?? blocks).flatMap((block) => replay.handle(block, draw.symbol) ?? [])
  if (used.length === 0) return undefined
  return (random) => {
    for (let i = 0; i < BATCH; i += 1) {
      const error = u * random.normal()
      for (const { nominal, draws } of used)
        draws[i] = draw.relative ? nominal * Math.exp(error) : nominal + error
    }
  }
}
