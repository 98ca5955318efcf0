import { z } from 'zod'
import { Direction } from './runs.js'
import { TargetQuantity } from './target.js'

const finite = z.number()
const interval = z.tuple([finite, finite])

/** One row of a budget: a cause, how uncertain it is, and what it brings to the figure. */
export const Contribution = z.strictObject({
  id: z.string(),
  name: z.string(),
  /** Standard uncertainty of the cause, in its unit. */
  standardUncertainty: finite,
  unit: z.string(),
  /** Expected size of a cause that lies one way only, in the same unit. */
  expectedSize: finite.optional(),
  /** Relative change of the figure for one unit of the cause; its sign says which way. */
  sensitivity: finite,
  /** Relative standard uncertainty that the cause brings to the figure. */
  contribution: finite,
  /** Share of the variance, 0 to 1. */
  share: finite,
  /** Whether all readings of the test share it, or one run has it of its own. */
  scope: z.enum(['shared', 'run']),
  /** Input of the record's uncertainty part that sets it. */
  input: z.string().optional(),
})
export type Contribution = z.infer<typeof Contribution>

export const FigureUncertainty = z.strictObject({
  quantity: z.string(),
  label: z.string(),
  value: finite,
  unit: z.string(),
  referencePressure_Pa: finite,
  /** Combined standard uncertainty (k = 1), in the unit of the figure and relative. */
  standardUncertainty: finite,
  relativeStandardUncertainty: finite,
  effectiveDegreesOfFreedom: finite,
  coverageFactor: finite,
  /**
   * What is expected to be missing from the figure, as a correction of its logarithm: causes that lie one way only. The
   * figure is not changed by it; the interval is set about the corrected value.
   */
  expectedCorrection: finite,
  /** 95 % interval of everything in the budget. */
  interval95: interval,
  contributions: z.array(Contribution),
})
export type FigureUncertainty = z.infer<typeof FigureUncertainty>

export const UncertaintyEvaluation = z.strictObject({
  figures: z.array(FigureUncertainty),
  /** What was taken by default, with its source. */
  defaults: z.array(
    z.strictObject({
      input: z.string(),
      term: z.string(),
      value: finite,
      unit: z.string(),
      source: z.string(),
    }),
  ),
})
export type UncertaintyEvaluation = z.infer<typeof UncertaintyEvaluation>

export const OtherFit = z.strictObject({
  fit: z.enum(['official', 'line of organic correlation', 'least squares, errors in both variables']),
  exponent: finite,
  airFlowCoefficient: finite,
  q50: finite,
  q4: finite,
  /** Relative difference to the official fit. */
  q50Difference: finite,
  q4Difference: finite,
  /** Weighted squares of the residuals for each degree of freedom: about 1 where scatter is as expected. */
  reducedChiSquare: finite.optional(),
})
export type OtherFit = z.infer<typeof OtherFit>

export const RunFits = z.strictObject({
  direction: Direction,
  fits: z.array(OtherFit),
  explanation: z.string(),
})
export type RunFits = z.infer<typeof RunFits>

/** How sure the verdict is. It is shown beside the verdict and never replaces it. */
export const Decision = z.strictObject({
  quantity: TargetQuantity,
  referencePressure_Pa: finite,
  value: finite,
  limit: finite,
  unit: z.string(),
  /** Probability that the true value meets the limit; that of each direction does, where each must. */
  probability: finite,
  /** Probability that all limits of the target are met, where it has several. */
  allLimitsProbability: finite.optional(),
  acceptedRisk: finite,
  /** The largest value that may be accepted for the accepted risk. */
  acceptanceLimit: finite,
  withinAcceptanceLimit: z.boolean(),
  words: z.string(),
})
export type Decision = z.infer<typeof Decision>
