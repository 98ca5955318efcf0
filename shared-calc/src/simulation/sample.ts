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

  summary(): SampleSummary {
    const values = this.values.subarray(0, this.count).slice().sort()
    const [mean, deviation] = spread(values)
    const [, relative] = spread(values.map(Math.log))
    const at = (share: number) => values[Math.round(share * (values.length - 1))] ?? Number.NaN
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

function spread(values: Float64Array): [mean: number, deviation: number] {
  let sum = 0
  for (const value of values) sum += value
  const mean = sum / values.length
  let squares = 0
  for (const value of values) squares += (value - mean) ** 2
  return [mean, Math.sqrt(squares / (values.length - 1))]
}
