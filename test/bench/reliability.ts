import shareBelow from '@stdlib/stats-base-dists-t-cdf'
import type { Stated } from './coverage.js'

/** Of the decisions stated with about one probability: how many, what was stated, and how often it came true. */
export interface Reliability {
  readonly from: number
  readonly decisions: number
  readonly stated: number
  readonly met: number
}

const edges = [0, 0.01, 0.05, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 0.95, 0.98, 0.99, 1] as const
const LIMITS = 40
const REACH = 6

/**
 * How often a target is truly met against the probability stated for it. Limits lie anywhere about the truth, as if
 * houses of every leakage were tested against one limit: evenly in logarithms, six standard uncertainties either way. The
 * probability stated is Student's share by the figure's own correction, uncertainty and degrees of freedom.
 */
export function reliabilityOf(all: readonly Stated[]): Reliability[] {
  const sums = edges.slice(1).map(() => ({ decisions: 0, stated: 0, met: 0 }))
  for (const [i, one] of all.entries())
    for (let k = 0; k < LIMITS; k += 1) {
      // Evenly spread, at other places for every test.
      const place = (k + ((i * 0.618034) % 1)) / LIMITS
      const aboveTruth = (2 * place - 1) * REACH * one.relativeStandardUncertainty
      const aboveCorrected = aboveTruth + one.error - one.expectedCorrection
      const stated = shareBelow(
        aboveCorrected / one.relativeStandardUncertainty,
        one.effectiveDegreesOfFreedom,
      )
      const bin = sums[edges.findLastIndex((edge) => stated >= edge)] ?? sums.at(-1)
      if (!bin) throw new RangeError('no bin')
      bin.decisions += 1
      bin.stated += stated
      bin.met += aboveTruth >= 0 ? 1 : 0
    }
  return sums.map(({ decisions, stated, met }, i) => ({
    from: edges[i] as number,
    decisions,
    stated: stated / decisions,
    met: met / decisions,
  }))
}
