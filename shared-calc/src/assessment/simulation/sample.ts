import { select } from './select.js'

export interface SampleSummary {
  readonly draws: number
  readonly mean: number
  /** Standard deviation of the draws, and of their logarithms: the relative standard uncertainty. */
  readonly standardUncertainty: number
  readonly relativeStandardUncertainty: number
  /** The 2.5 and 97.5 % points of the draws. */
  readonly interval95: readonly [number, number]
  /** Draws that gave no number, left out of all else. */
  readonly failed: number
}

/** A growing sample of positive numbers. */
export class Sample {
  private readonly values: Float64Array
  private count = 0
  private failed = 0

  constructor(capacity: number) {
    this.values = new Float64Array(capacity)
  }

  add(value: number): void {
    if (Number.isFinite(value) && value > 0) {
      this.values[this.count] = value
      this.count += 1
    } else this.failed += 1
  }

  /** Share of the draws up to a limit. */
  shareUpTo(limit: number): number {
    let within = 0
    for (let i = 0; i < this.count; i += 1) if ((this.values[i] as number) <= limit) within += 1
    return within / this.count
  }

  /** Sums the draws up; they are rearranged, none is lost. */
  summary(): SampleSummary {
    const values = this.values.subarray(0, this.count)
    const [mean, deviation] = spread(values, (value) => value)
    const [, relative] = spread(values, Math.log)
    const at = (share: number) => select(values, Math.round(share * (values.length - 1))) ?? Number.NaN
    return {
      draws: this.count + this.failed,
      mean,
      standardUncertainty: deviation,
      relativeStandardUncertainty: relative,
      interval95: [at(0.025), at(0.975)],
      failed: this.failed,
    }
  }
}

/** Mean and standard deviation of a function of the values, in one pass round the first of them. */
function spread(values: Float64Array, of: (value: number) => number): [mean: number, deviation: number] {
  const origin = of(values[0] ?? Number.NaN)
  let sum = 0
  let squares = 0
  for (let i = 0; i < values.length; i += 1) {
    const off = of(values[i] as number) - origin
    sum += off
    squares += off * off
  }
  const mean = sum / values.length
  return [origin + mean, Math.sqrt((squares - sum * mean) / (values.length - 1))]
}
