import type { TestRecord } from '../../contract/record/index.js'
import { BATCH } from './batch-value.js'
import { prepare } from './prepare.js'
import { randomFrom } from './random.js'
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
 * Monte Carlo through the formulas of the evaluation (JCGM 101:2008): every input is drawn from what the budget says about
 * it, and the whole calculation run again. Yields its progress, 0 to 1, so that the caller can show it, pause or stop;
 * returns the figures.
 * @throws InputError as evaluate does
 */
export function* simulate(
  record: TestRecord,
  { draws = SIMULATION_DRAWS, seed = 1 }: SimulationOptions = {},
): Generator<number, SimulatedFigure[]> {
  const { figures, draw } = prepare(record)
  const random = randomFrom(seed)
  const samples = figures.map(({ at }) => ({ at, sample: new Sample(draws) }))
  let told = 0
  for (let done = 0; done < draws; ) {
    draw(random)
    const batch = Math.min(BATCH, draws - done)
    for (const { at, sample } of samples) for (let i = 0; i < batch; i += 1) sample.add(at(i))
    done += batch
    if (done - told < PROGRESS_EVERY && done < draws) continue
    told = done
    yield done / draws
  }
  return figures.map(({ quantity, unit, value, limit }, i) => {
    const { sample } = samples[i] as (typeof samples)[number]
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
