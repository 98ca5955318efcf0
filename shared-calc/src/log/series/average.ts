import { Calculation } from '../../engine/index.js'
import { averageOfSeries } from '../../formulas/series-average.js'

/** The average of one window of a series, in the series' unit. */
export interface Average {
  mean: number
  standardDeviation: number
  samples: number
  /** Fewer than `samples` where neighbours are alike. */
  effectiveSamples: number
  /**
   * Of the mean, allowing for autocorrelation; undefined where the samples are too alike to tell. Tried on made-up gusts
   * (test/log/series-average.test.ts): true to 10 % above some 10 effective samples, up to a fifth too small below.
   */
  standardUncertainty?: number
  /** Rise of the straight line through the window from its first to its last sample. */
  drift: number
  /** Standard uncertainty of that rise from the scatter about the line. */
  driftUncertainty: number
}

/** Below so many effective samples the scatter seen says nothing of the scatter there is. Own choice, no source. */
const FEWEST = 4
/** Below so many the stated uncertainty is to be taken with care. */
export const FEW = 10

/** Averages samples first…last (both included) of a series; times in s. */
export function averageOf(values: Float64Array, times: Float64Array, first: number, last: number): Average {
  const samples = last - first + 1
  const mean = meanOf(values, first, last)
  const middle = meanOf(times, first, last)
  let sxx = 0
  let sxy = 0
  let syy = 0
  for (let index = first; index <= last; index++) {
    const x = (times[index] as number) - middle
    const y = (values[index] as number) - mean
    sxx += x * x
    sxy += x * y
    syy += y * y
  }
  const span = (times[last] as number) - (times[first] as number)
  const standardDeviation = samples > 1 ? Math.sqrt(syy / (samples - 1)) : 0
  const slope = sxx > 0 ? sxy / sxx : 0
  const left = Float64Array.from({ length: samples }, (_, index) => {
    const x = (times[first + index] as number) - middle
    return (values[first + index] as number) - mean - slope * x
  })
  const scatter = samples > 1 ? Math.sqrt(Math.max(0, syy - slope * sxy) / (samples - 1)) : 0
  return {
    mean,
    standardDeviation,
    samples,
    drift: slope * span,
    // The rise of a line through evenly spaced samples is √12 times as uncertain as their mean.
    driftUncertainty: Math.sqrt(12) * (uncertainty(left, 0, samples, 0, scatter).standardUncertainty ?? 0),
    ...uncertainty(values, first, samples, mean, standardDeviation),
  }
}

function meanOf(values: Float64Array, first: number, last: number): number {
  let sum = 0
  for (let index = first; index <= last; index++) sum += values[index] as number
  return sum / (last - first + 1)
}

function uncertainty(
  values: Float64Array,
  first: number,
  samples: number,
  mean: number,
  deviation: number,
): { effectiveSamples: number; standardUncertainty?: number } {
  if (deviation === 0) return { effectiveSamples: samples, standardUncertainty: 0 }
  const { lags, correlations } = positiveCorrelations(values, first, samples, mean)
  const origin = () => ({ kind: 'rule', reason: 'sample autocorrelation' }) as const
  const block = new Calculation().add('average', averageOfSeries.title, averageOfSeries, {
    k: { values: lags, origin },
    r_k: { values: correlations, origin },
    N_s: { value: samples, origin: origin() },
    s_s: { value: deviation, origin: origin() },
  })
  const effectiveSamples = block.value('n_eff')
  return effectiveSamples > FEWEST
    ? { effectiveSamples, standardUncertainty: block.value('u_s') }
    : { effectiveSamples }
}

/** Longest lag looked at, in samples: 100 s at 10 Hz, far beyond what gusts are alike for; it bounds the time taken. */
const LONGEST_LAG = 1000

/** Sample autocorrelations from lag 1 to the last before the first that is not positive; one row of zero where that is lag 1. */
function positiveCorrelations(values: Float64Array, first: number, samples: number, mean: number) {
  const correlations: number[] = []
  const variance = lagged(values, first, samples, mean, 0)
  for (let lag = 1; lag < Math.min(samples, LONGEST_LAG); lag++) {
    const correlation = lagged(values, first, samples, mean, lag) / variance
    if (correlation <= 0) break
    correlations.push(correlation)
  }
  if (correlations.length === 0) correlations.push(0)
  return {
    lags: correlations.map((_, index) => index + 1),
    correlations,
  }
}

function lagged(values: Float64Array, first: number, samples: number, mean: number, lag: number): number {
  let sum = 0
  for (let index = first; index + lag < first + samples; index++)
    sum += ((values[index] as number) - mean) * ((values[index + lag] as number) - mean)
  return sum
}
