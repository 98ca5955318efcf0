import type { Direction, JudgedTarget, TargetQuantity } from '../../contract/record/index.js'
import type { Block, Calculation, Given } from '../../engine/index.js'
import type { LimitRule, TargetPreset } from '../../targets/index.js'
import type { WorkedFlows } from './device-flow.js'

/** The blocks of one run. */
export interface WorkedRun {
  readonly direction: Direction
  /** Index of the run in the record. */
  readonly index: number
  readonly before: Block | undefined
  readonly after: Block | undefined
  readonly flows: WorkedFlows
  readonly curve: Block
  /** How far each reading lies from the curve. */
  readonly deviation: Block
  /** Only where the method fits a line. */
  readonly scatter: Block | undefined
  readonly residuals: Block | undefined
  readonly standard: Block
  readonly lowest: Block | undefined
  /** By reference pressure in Pa. */
  readonly at: ReadonlyMap<number, AtPressure>
}

export interface AtPressure {
  readonly rate: Block
  /** Only at 50 Pa and at the target's reference pressure, where they are reported. */
  readonly derived: Block | undefined
  /** Normalised leakage area, only where the target or the method asks for it. */
  readonly area?: Block
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
  readonly value: Block
  /** The limit before factors and rounding, with which probabilities are worked out. */
  readonly limitBefore: Given
  /** The air leakage rate that just meets the limit. */
  readonly flow: Block
  readonly toSeal: Block
  readonly ageing: readonly Block[]
}

/** A whole test worked out. */
export interface WorkedTest {
  readonly calculation: Calculation
  readonly indoor: Block
  readonly outdoor: Block
  readonly runs: readonly WorkedRun[]
  /** Means over the directions, by reference pressure in Pa. */
  readonly means: ReadonlyMap<number, AtPressure>
  readonly stack?: Block
  /** What the method reports beyond the quantities of every evaluation. */
  readonly reported?: Block
  readonly target?: DefiniteTarget
  readonly criteria: readonly WorkedCriterion[]
  /** Limits of which one was enough, and that were not the one judged. */
  readonly alternatives: readonly WorkedCriterion[]
}
