import type { Direction, JudgedTarget, TargetQuantity } from '../../contract/record/index.js'
import type { Block, Calculation } from '../../engine/index.js'
import type { LimitRule } from '../../targets/presets.js'
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
}

/** A target made definite for this building: which limits count, and over which directions. */
export interface DefiniteTarget {
  readonly target: JudgedTarget
  readonly limits: readonly LimitRule[]
}

export interface WorkedCriterion {
  readonly quantity: TargetQuantity
  readonly referencePressure_Pa: number
  readonly judged: 'mean' | 'one direction' | 'worse direction'
  readonly value: Block
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
}
