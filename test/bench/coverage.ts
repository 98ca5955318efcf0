import { type Evaluation, evaluate, InputError, type TestRecord } from '@draughtbook/shared-calc'
import { chanceFrom } from './houses/chance.js'
import type { Family } from './houses/house.js'
import type { Instruments } from './houses/instruments.js'
import { simulatedTest, type Weather } from './houses/simulated-test.js'

export const quantities = ['q50', 'ela4'] as const
export type Quantity = (typeof quantities)[number]
export const directions = ['both', 'one'] as const
export type Directions = (typeof directions)[number]

/** What was stated of one figure, with the truth it stands for. */
export interface Stated {
  readonly quantity: Quantity
  readonly directions: Directions
  /** ln(true/found). */
  readonly error: number
  readonly expectedCorrection: number
  readonly relativeStandardUncertainty: number
  readonly effectiveDegreesOfFreedom: number
  /** Whether the stated 95 % interval holds the truth. */
  readonly held: boolean
}

export interface Drawn {
  readonly stated: readonly Stated[]
  /** Evaluations refused or without a budget: a reading on the wrong side of the zero-flow pressure. */
  readonly useless: number
}

/** One direction is enough for this target, so that nothing is added for the one that was not run. */
const oneIsEnough = { quantity: 'q50', limit: 1000, directions: 'any' } as const

/** Simulates tests of one kind of day; states each from both directions and from one, the first and the second in turn. */
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
    const one = record.runs.slice(i % 2, (i % 2) + 1)
    for (const [which, runs] of [
      ['both', record.runs],
      ['one', one],
    ] as const) {
      const { uncertainty } = evaluated({ ...record, runs, target: oneIsEnough }) ?? {}
      if (!uncertainty) useless += 1
      else
        for (const quantity of quantities)
          stated.push({ ...figureOf(uncertainty.figures, quantity, truth[quantity]), directions: which })
    }
  }
  return { stated, useless }
}

export function figureOf(
  figures: NonNullable<Evaluation['uncertainty']>['figures'],
  quantity: Quantity,
  truth: number,
): Omit<Stated, 'directions'> {
  const figure = figures.find((one) => one.quantity === quantity)
  if (!figure) throw new Error(`no budget of ${quantity}`)
  const { value, expectedCorrection, relativeStandardUncertainty, effectiveDegreesOfFreedom } = figure
  const [low, high] = figure.interval95
  return {
    quantity,
    error: Math.log(truth / value),
    expectedCorrection,
    relativeStandardUncertainty,
    effectiveDegreesOfFreedom,
    held: truth >= low && truth <= high,
  }
}

/** Share of the stated intervals that hold the truth. */
export const coverageOf = (stated: readonly Stated[]): number =>
  stated.filter(({ held }) => held).length / stated.length

/** The evaluation; undefined where a reading lies on the wrong side of the zero-flow pressure. */
function evaluated(record: TestRecord): Evaluation | undefined {
  try {
    return evaluate(record)
  } catch (error) {
    if (error instanceof InputError) return undefined
    throw error
  }
}
