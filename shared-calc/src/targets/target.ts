import type {
  AdjoiningSpaces,
  BuildingPreparation,
  TargetDirections,
  TargetQuantity,
  VolumeBasis,
} from '../contract/record/index.js'
import type { Source } from '../engine/index.js'

/** One limit of a target, in the unit of the evaluation; `when` bounds the internal volume, in m³, for which it counts. */
export interface LimitRule {
  readonly quantity: TargetQuantity
  readonly limit: number
  readonly referencePressure_Pa: number
  /** As the scheme prints it, where its unit is another. */
  readonly printed?: { readonly value: number; readonly unit: string }
  readonly when?: { readonly atLeast_m3?: number; readonly above_m3?: number; readonly upTo_m3?: number }
  /** Judged in its place, never validly, where the building lacks the basis of this one. */
  readonly standIn?: TargetQuantity
  readonly source: Source
}

/** What a scheme asks of the test itself; whether anything else makes the verdict invalid. */
export interface Accepted<Value> {
  readonly accepted: readonly Value[]
  readonly otherwise: 'invalidates' | 'caution'
  readonly source: Source
}

/** A published target: one entry of the catalogue. */
export interface TargetPreset {
  readonly id: string
  readonly label: string
  /** Country or scheme. */
  readonly scheme: string
  readonly edition: string
  readonly directions: TargetDirections
  /** Whether every limit must be met, or any one of them. */
  readonly satisfiedBy: 'all' | 'any'
  readonly limits: readonly LimitRule[]
  readonly volumeBasis?: VolumeBasis
  readonly volumeBasisSource?: Source
  /** What a volume on another basis does to the verdict. */
  readonly otherVolumeBasis?: 'invalidates' | 'caution'
  /** How the scheme takes the area that a limit is related to. */
  readonly area?: string
  readonly preparation?: Accepted<BuildingPreparation>
  readonly adjoiningSpaces?: Accepted<AdjoiningSpaces>
  /** Decimal places to which the scheme rounds before it compares. */
  readonly decimalPlaces?: number
  /** Factor on the result of tested buildings that stand for others. */
  readonly sampling?: {
    readonly factor: number
    readonly source: Source
    /** Homes to be tested of a building, the smallest buildings first. */
    readonly sizes?: readonly { readonly upToHomes?: number; readonly tests: number }[]
    /** Further homes to be tested for each that misses; 0 where the scheme asks for none. */
    readonly morePerMiss?: number
    readonly sizeSource?: Source
  }
  /** Set where the scheme does not accept a highest pressure below 50 Pa even for a large building. */
  readonly noLargeBuildingException?: Source
  readonly notes?: readonly string[]
}

export const seen = (text: string): Source => ({ text, seen: 'read' })
export const remembered = (text: string): Source => ({ text, seen: 'memory' })

/** Units in which schemes print their limits: what one of them is in the unit of the evaluation. Source: NIST SP 811, B.8. */
const inOurs = {
  'cfm/ft2': 0.3048 * 60,
  'L/(s·m2)': 3.6,
} as const

/** A limit at 50 Pa. */
export const at50 = (
  quantity: TargetQuantity,
  limit: number,
  source: Source,
  when?: LimitRule['when'],
): LimitRule => ({ quantity, limit, referencePressure_Pa: 50, ...(when && { when }), source })

/** A limit printed in another unit. */
export const printedLimit = (
  quantity: TargetQuantity,
  value: number,
  unit: keyof typeof inOurs,
  source: Source,
  referencePressure_Pa = 50,
): LimitRule => ({
  quantity,
  limit: value * inOurs[unit],
  printed: { value, unit },
  referencePressure_Pa,
  source,
})
