import type { VolumeBasis } from '../record/index.js'
import type { Rule } from '../rules/rule.js'
import type { Source } from '../sheet/index.js'

/** A limit with its clause. */
export interface Limit {
  readonly value: number
  readonly source: Source
}

/** The thresholds that a method sets; the rules hold the comparison, the method the number. */
export interface MethodLimits {
  readonly readingsPerDirection: Limit
  readonly highestPressure_Pa: Limit
  readonly highestPressureLargeBuilding_Pa: Limit
  readonly lowestPressure_Pa: Limit
  readonly zeroFlowMultiple: Limit
  readonly readingSpacing_Pa: Limit
  readonly readingSpacingSlack_Pa: number
  readonly pressureCeiling_Pa: Limit
  readonly zeroFlow_Pa: Limit
  readonly zeroFlowSamples: Limit
  readonly zeroFlowDuration_s: number
  readonly exponent: { readonly lowest: number; readonly highest: number; readonly source: Source }
  readonly rSquared: Limit
  readonly heightTemperature_mK: Limit
  readonly windGround_m_s: Limit
  readonly windMeteorological_m_s: Limit
  readonly beaufort: Limit
  readonly averagingTime_s: Limit
  readonly directionsDiffer: Limit
}

/** A test method: its limits, rules and words. Methods differ in these only. */
export interface Method {
  readonly id: string
  readonly title: string
  /** Basis on which the method takes the internal volume. */
  readonly volumeBasis: VolumeBasis
  readonly volumeBasisSource: Source
  readonly limits: MethodLimits
  readonly rules: readonly Rule[]
  /** The method's own names of the reported quantities. */
  readonly terms: Readonly<Record<'q50' | 'n50' | 'qE50' | 'qF50' | 'ela4' | 'ela10', string>>
  readonly notes: readonly string[]
}
