import type { Direction, JudgedTarget, TargetQuantity } from '../../contract/record/index.js'
import type { Block, BlockOf, Calculation, Given } from '../../engine/index.js'
import type { moistAir } from '../../formulas/air.js'
import type { fitDeviation } from '../../formulas/confidence.js'
import type { derivedRates, meanOfDirections, normalisedLeakageArea } from '../../formulas/derived.js'
import type { leakageStep } from '../../formulas/leakage-step.js'
import type { lowestPressure, stackMeasure } from '../../formulas/limits.js'
import type { allowedLeakage } from '../../formulas/plan-flows.js'
import type {
  ageing,
  areaToSeal,
  comparison,
  flowThroughAllowedArea,
  leakageToSeal,
} from '../../formulas/verdict.js'
import type { zeroFlowPeriod } from '../../formulas/zero-flow.js'
import type { CurveChapters } from '../../methods/method.js'
import type { LimitRule, TargetPreset } from '../../targets/index.js'
import type { WorkedFlows } from './device-flow.js'

/** The blocks of one run. */
export interface WorkedRun {
  readonly direction: Direction
  /** Index of the run in the record. */
  readonly index: number
  readonly before: BlockOf<typeof zeroFlowPeriod> | undefined
  readonly after: BlockOf<typeof zeroFlowPeriod> | undefined
  readonly flows: WorkedFlows
  readonly curve: BlockOf<CurveChapters['curve']>
  /** How far each reading lies from the curve. */
  readonly deviation: BlockOf<typeof fitDeviation>
  /** Only where the method fits a line. */
  readonly scatter: BlockOf<CurveChapters['scatter']> | undefined
  readonly residuals: BlockOf<CurveChapters['residuals']> | undefined
  readonly standard: BlockOf<CurveChapters['standard']>
  readonly lowest: BlockOf<typeof lowestPressure> | undefined
  /** By reference pressure in Pa. */
  readonly at: ReadonlyMap<number, AtPressure>
}

export interface AtPressure {
  readonly rate: BlockOf<CurveChapters['rate'] | typeof meanOfDirections>
  /** Only at 50 Pa and at the target's reference pressure, where they are reported. */
  readonly derived: BlockOf<typeof derivedRates> | undefined
  /** Normalised leakage area, only where the target or the method asks for it. */
  readonly area: BlockOf<typeof normalisedLeakageArea> | undefined
}

/** A target made definite for this building: which limits count, and over which directions. */
export interface DefiniteTarget {
  readonly target: JudgedTarget
  readonly limits: readonly LimitRule[]
  readonly satisfiedBy: 'all' | 'any'
  /** The entry of the catalogue, where it is one. */
  readonly preset?: TargetPreset
  /** Only where the result stands for buildings that were not tested. */
  readonly sampling?: NonNullable<TargetPreset['sampling']>
}

export interface WorkedCriterion {
  readonly quantity: TargetQuantity
  readonly referencePressure_Pa: number
  readonly judged: 'mean' | 'one direction' | 'worse direction'
  readonly value: BlockOf<typeof comparison>
  /** The limit before factors and rounding, with which probabilities are worked out. */
  readonly limitBefore: Given
  /** The air leakage rate that just meets the limit. */
  readonly flow: BlockOf<typeof flowThroughAllowedArea | typeof allowedLeakage>
  readonly toSeal: BlockOf<typeof areaToSeal | typeof leakageToSeal>
  readonly ageing: readonly BlockOf<typeof ageing>[]
}

/** A run whose leakage changed from one reading to the next. */
export interface LeakageStep {
  readonly run: WorkedRun
  /** Index of the first reading after the change. */
  readonly from: number
  readonly step: BlockOf<typeof leakageStep>
}

/** A whole test worked out. */
export interface WorkedTest {
  readonly calculation: Calculation
  readonly indoor: BlockOf<typeof moistAir>
  readonly outdoor: BlockOf<typeof moistAir>
  readonly runs: readonly WorkedRun[]
  /** Means over the directions, by reference pressure in Pa. */
  readonly means: ReadonlyMap<number, AtPressure>
  /** Runs whose leakage changed between two readings. */
  readonly steps: readonly LeakageStep[]
  readonly stack: BlockOf<typeof stackMeasure> | undefined
  /** What the method reports beyond the quantities of every evaluation; its symbols are those its method reports. */
  readonly reported: Block<string> | undefined
  readonly target: DefiniteTarget | undefined
  readonly criteria: readonly WorkedCriterion[]
  /** Limits of which one was enough, and that were not the one judged. */
  readonly alternatives: readonly WorkedCriterion[]
}
