import { type Evaluation, evaluate, InputError, type TestRecord } from '@draughtbook/shared-calc'
import { chanceFrom } from './houses/chance.js'
import type { Family } from './houses/house.js'
import type { Instruments } from './houses/instruments.js'
import { simulatedTest, type Weather } from './houses/simulated-test.js'

export type Quantity = 'q50' | 'ela4'
export type Directions = 'both' | 'one'

/** One stated figure with the truth it stands for. */
export interface Stated {
  readonly quantity: Quantity
  readonly directions: Directions
  /** ln(true/found). */
  readonly error: number
  /** What the budget expects of it. */
  readonly expectedCorrection: number
  readonly relativeStandardUncertainty: number
  readonly effectiveDegreesOfFreedom: number
  readonly held: boolean
  readonly shares: Readonly<Record<string, number>>
}

export interface Drawn {
  readonly stated: readonly Stated[]
  /** Tests that wind made useless: no curve could be put through their readings. */
  readonly useless: number
}

/** Simulates tests of one cell and what is stated of them from both directions and from one. */
export function drawCell(
  family: Family,
  weather: Weather,
  instruments: Instruments,
  tests: number,
  seed: number,
): Drawn {
  const chance = chanceFrom(seed)
  const stated: Stated[] = []
  let useless = 0
  for (let i = 0; i < tests; i += 1) {
    const { record, truth } = simulatedTest(family, weather, instruments, chance)
    const one = { quantity: 'n50', limit: 1, directions: 'any' } as const
    const runs = record.runs.slice(i % 2, (i % 2) + 1)
    for (const [directions, asked] of [
      ['both', record],
      ['one', { ...record, runs, target: one }],
    ] as const) {
      const evaluation = evaluated(asked)
      if (!evaluation) useless += 1
      else for (const quantity of ['q50', 'ela4'] as const)
          stated.push({ ...figureOf(evaluation, quantity, truth[quantity]), directions })
    }
  }
  return { stated, useless }
}

function figureOf(evaluation: Evaluation, quantity: Quantity, truth: number): Omit<Stated, 'directions'> {
  const figure = evaluation.uncertainty?.figures.find((one) => one.quantity === quantity)
  if (!figure) throw new Error(`no budget of ${quantity}`)
  const [low, high] = figure.interval95
  return {
    quantity,
    error: Math.log(truth / figure.value),
    expectedCorrection: figure.expectedCorrection,
    relativeStandardUncertainty: figure.relativeStandardUncertainty,
    effectiveDegreesOfFreedom: figure.effectiveDegreesOfFreedom,
    held: truth >= low && truth <= high,
    shares: Object.fromEntries(figure.contributions.map(({ id, contribution }) => [id, contribution])),
  }
}

function evaluated(record: TestRecord): Evaluation | undefined {
  try {
    return evaluate(record)
  } catch (error) {
    if (error instanceof InputError) return undefined
    throw error
  }
}
