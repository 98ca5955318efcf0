import type { ResultKey } from '../catalogue/figures.js'
import type { CustomaryUnit } from '../catalogue/shown-figure.js'
import type { VolumeBasis } from '../contract/record/index.js'
import type { Chapter, Source, SymbolOf } from '../engine/index.js'
import type * as reference from '../formulas/at-reference-pressure.js'
import type * as confidence from '../formulas/confidence.js'
import type * as line from '../formulas/leakage-curve.js'
import type * as stations from '../formulas/repeated-readings.js'
import type { standardAir } from '../formulas/standard-air.js'
import type * as sensitivity from '../formulas/uncertainty-curve.js'
import type { standardAirViscous } from '../formulas/viscosity.js'

/** A limit with its clause. */
export interface Limit {
  readonly value: number
  readonly source: Source
}

/** The thresholds that a method sets; the rules make the comparison, the method gives the number. */
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
  /** A method that sets none judges no correlation. */
  readonly rSquared?: Limit
  readonly heightTemperature_mK?: Limit & { readonly beyond: 'caution' | 'invalidates' }
  readonly windGround_m_s?: Limit
  readonly windMeteorological_m_s?: Limit
  readonly beaufort?: Limit
  /** Outdoor temperatures that the method prefers. */
  readonly outdoorTemperature_C?: {
    readonly lowest: number
    readonly highest: number
    readonly source: Source
  }
  /** Highest pressure of the method's range, with what "about" allows. */
  readonly topPressure_Pa?: Limit & { readonly slack_Pa: number }
  /** Largest error that the method allows its instruments. */
  readonly accuracy?: {
    readonly gauge_Pa?: Limit
    readonly gauge_relative?: Limit
    readonly flow_relative?: Limit
    readonly temperature_K?: Limit
  }
  /** Largest difference of the inside pressures, as a share of the pressure of the test. */
  readonly evenness?: Limit
  readonly averagingTime_s: Limit
  readonly directionsDiffer: Limit
  /** Directions that the method itself asks for, whatever the target counts. */
  readonly directions?: {
    readonly asked: 'both' | 'depressurisation' | 'pressurisation'
    readonly source: Source
  }
  /** Relative standard error of the leakage area at its pressure. */
  readonly leakageAreaError?: Limit & { readonly at_Pa: number }
}

/** A chapter with the symbols of any of several: a method has one of them. */
type OneOf<C> = Chapter<SymbolOf<C>>

/**
 * The formulas by which a run becomes a leakage curve and its figures. Each chapter is given what its inputs ask for by
 * symbol: from the readings, the air and the chapters before it.
 */
export interface CurveChapters {
  /** From readings to coefficient and exponent: gives at least dp, q_env, x, y, N, n, C_env, q_fit. */
  readonly curve: OneOf<
    | typeof line.leakageCurve
    | typeof line.weightedLeakageCurve
    | typeof stations.onePointCurve
    | typeof stations.twoPointCurve
    | typeof stations.onePointWithFactors
  >
  /** Scatter of the fit; a method that fits no line has none. */
  readonly scatter?: OneOf<typeof confidence.fitScatter | typeof confidence.weightedFitScatter>
  readonly residuals?: OneOf<typeof confidence.studentisedResiduals>
  /** To reference air: gives C_L. */
  readonly standard: OneOf<typeof standardAir | typeof standardAirViscous | typeof stations.correctedAlready>
  /** At a reference pressure: gives q_pr and A_L. */
  readonly rate: OneOf<typeof reference.atReferencePressure | typeof reference.atReferencePressureHole>
  /** How the logarithm of q_pr changes with each reading: gives c_x, c_y and the sums that the budget needs. */
  readonly sensitivity: OneOf<
    | typeof sensitivity.fittedLineSensitivity
    | typeof sensitivity.onePointSensitivity
    | typeof sensitivity.twoPointSensitivity
  >
}

/** A figure that the method itself reports, read off one of the blocks. */
export interface OfficialFigure {
  readonly term: string
  /** `curve`, `standard` and `run` give one figure a run, the others one for the test at a pressure. */
  readonly from:
    | 'curve'
    | 'standard'
    | 'reported'
    | { readonly of: 'mean' | 'derived' | 'area' | 'run'; readonly at_Pa: number }
  readonly symbol: string
  readonly unit: string
  /** Unit in which the method's users expect it, where that is a US customary one. */
  readonly customary?: CustomaryUnit
  readonly source: Source
}

/** Stations of a method that repeats its readings at one or two pressures. */
export interface Stations {
  readonly pressures_Pa: readonly number[]
  /** How far from its pressure a station may lie, as a share of it. */
  readonly slack: number
  /** Readings that each station needs. */
  readonly repeats: Limit
}

/** A test method: its formulas, limits, rules and words. Methods differ in these only. */
export interface Method {
  readonly id: string
  readonly title: string
  /** Basis on which the method takes the internal volume. */
  readonly volumeBasis: VolumeBasis
  readonly volumeBasisSource: Source
  readonly limits: MethodLimits
  readonly formulas: CurveChapters
  /** Reference pressures of the method beside the reported 50, 10 and 4 Pa. */
  readonly referencePressures?: readonly number[]
  /** Pressures at which the method reports the leakage area of a sharp-edged hole per envelope area. */
  readonly normalisedAreaAt_Pa?: readonly number[]
  /** Whether a limit is compared with the extended result of a one-point test. */
  readonly judgesExtended?: boolean
  /** Fewest readings of a run that can be worked out at all. */
  readonly fewestReadings?: number
  /** Exponent that the method assumes where it finds none. */
  readonly assumedExponent?: Limit
  /** Above what altitude or temperature difference the method's factors apply; they need the altitude of the site. */
  readonly correctsBeyond?: {
    readonly altitude_m: number
    readonly temperatureDifference_K: number
    readonly source: Source
  }
  /** Whether the method's factors hold the density of the air in the device, so that it takes the flow for reference air. */
  readonly takesFlowForReferenceAir?: boolean
  /** Formulas from the means at a pressure to what the method reports beyond the quantities of every evaluation. */
  readonly reported?: { readonly chapter: Chapter; readonly at_Pa: number }
  readonly stations?: Stations
  /** What the method itself reports, where that is more than the quantities every evaluation gives. */
  readonly official?: readonly OfficialFigure[]
  /** The method's own names of the reported quantities. */
  readonly terms: Readonly<Record<Exclude<ResultKey, 'q10' | 'q4'>, string>>
  readonly notes: readonly string[]
}

/** Limits borrowed from another standard: each cites its source, and a breach is only a note. */
export function takenOver(limits: MethodLimits): MethodLimits {
  const marked = Object.entries(limits).map(([name, limit]: [string, unknown]) => [name, withMark(limit)])
  return Object.fromEntries(marked) as MethodLimits
}

/** A limit, or a group of limits, with its source marked; common practice has no clause. */
function withMark(limit: unknown): unknown {
  if (typeof limit !== 'object' || limit === null) return limit
  const { source } = limit as { source?: { seen: string } }
  if (source)
    return source.seen === 'common practice' ? limit : { ...limit, source: { ...source, takenOver: true } }
  return Object.fromEntries(Object.entries(limit).map(([name, inner]) => [name, withMark(inner)]))
}

/** A line is fitted through three points at least. */
const FOR_A_CURVE = 3

/**
 * Fewest readings of a run that can be worked out by a method, or of a curve where there is none; a method that fits no
 * line may need fewer.
 */
export const fewestReadings = (method: Pick<Method, 'fewestReadings'> | undefined): number =>
  method?.fewestReadings ?? FOR_A_CURVE
