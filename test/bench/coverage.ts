import { type Evaluation, evaluate, InputError, type TestRecord } from '@draughtbook/shared-calc'
import { drawWindTest, randomFrom } from '@draughtbook/shared-calc/simulation'

export interface QuantityCoverage {
  /** Share of tests whose interval from the scatter of the fit alone holds the truth (one direction, as printed). */
  readonly fitScatter: number
  /** Share of tests whose interval from the full budget holds the truth (mean of the directions). */
  readonly budget: number
  /** Half width of the full interval, relative, in the middle of all tests. */
  readonly medianExpanded: number
  /** Mean of ln(found/true), and standard deviation: what is there to be covered. */
  readonly bias: number
  readonly spread: number
}

export interface Coverage {
  readonly wind_m_s: number
  readonly q50: QuantityCoverage
  readonly ela4: QuantityCoverage
  /** Tests that wind made useless: no curve could be put through their readings. They count for neither share. */
  readonly useless: number
}

/** Simulates tests at one wind speed and counts how often the stated 95 % intervals hold the truth. */
export function coverageAt(wind_m_s: number, tests: number, seed = 20261014): Coverage {
  const random = randomFrom(seed + wind_m_s)
  const q50 = new Count()
  const ela4 = new Count()
  let useless = 0
  for (let i = 0; i < tests; i += 1) {
    const { record, truth } = drawWindTest(wind_m_s, random)
    const evaluation = evaluated(record)
    if (!evaluation) {
      useless += 1
      continue
    }
    const { runs, uncertainty, results } = evaluation
    const figure = (name: string) => uncertainty?.figures.find(({ quantity }) => quantity === name)
    const [run] = runs
    if (!run) throw new Error('a simulated test has no run')
    q50.add(truth.q50, results.q50.value, run.q50.ci95, figure('q50')?.interval95)
    // The interval of the flow at 4 Pa, carried to the area: both go with the same coefficient and exponent.
    const scale = run.ela4.value / run.q4.value
    const scatter = run.q4.ci95 && ([run.q4.ci95[0] * scale, run.q4.ci95[1] * scale] as const)
    ela4.add(truth.ela4, results.ela4.value, scatter, figure('ela4')?.interval95)
  }
  return { wind_m_s, q50: q50.result(), ela4: ela4.result(), useless }
}

/** The evaluation; undefined where a reading lies on the wrong side of the zero-flow pressure. */
function evaluated(record: TestRecord): Evaluation | undefined {
  try {
    return evaluate(record)
  } catch (error) {
    if (error instanceof InputError) return undefined
    throw error
  }
}

type Interval = readonly [number, number] | undefined

class Count {
  private scatter = 0
  private budget = 0
  private readonly widths: number[] = []
  private readonly errors: number[] = []

  add(truth: number, found: number, scatter: Interval, budget: Interval): void {
    if (!scatter || !budget) throw new Error('a simulated test has no interval')
    if (truth >= scatter[0] && truth <= scatter[1]) this.scatter += 1
    if (truth >= budget[0] && truth <= budget[1]) this.budget += 1
    this.widths.push(Math.log(budget[1] / budget[0]) / 2)
    this.errors.push(Math.log(found / truth))
  }

  result(): QuantityCoverage {
    const { length } = this.errors
    const bias = this.errors.reduce((sum, error) => sum + error, 0) / length
    const squares = this.errors.reduce((sum, error) => sum + (error - bias) ** 2, 0)
    return {
      fitScatter: this.scatter / length,
      budget: this.budget / length,
      medianExpanded: [...this.widths].sort((a, b) => a - b)[Math.floor(length / 2)] ?? Number.NaN,
      bias,
      spread: Math.sqrt(squares / (length - 1)),
    }
  }
}
