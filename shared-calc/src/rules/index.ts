import { assumedHumidity, assumedPressure, assumedReferenceDensity, signConvention } from './assumptions.js'
import { missingBasis, missingPreparation, missingTarget, volumeBasis } from './building.js'
import { temperatureHeight, temperatureHeightAs, wind } from './conditions.js'
import { correlation, exponentRange, extrapolatedTarget, outlier } from './curve.js'
import { directionsDiffer, oneDirection } from './directions.js'
import { averagingTime, calibrationExpired, deviceRange, missingRanges } from './instruments.js'
import { leakLog } from './leaks.js'
import {
  cautionContradicted,
  cautionsUnanswered,
  preparationBlank,
  preparationDeparts,
  preparationPurpose,
} from './preparation.js'
import { assumedAltitude, assumedExponent, stationReadings } from './procedure.js'
import {
  duplicateReading,
  highestPressure,
  lowestPressure,
  pressureCeiling,
  readingSpacing,
  tooFewReadings,
} from './readings.js'
import type { Rule } from './rule.js'
import { takeOffParts, takeOffUsed } from './take-off.js'
import { zeroFlowLimit, zeroFlowSamples } from './zero-flow.js'

export { citing, plain, type Rule, type RuleContext } from './rule.js'

/** The rules of a multi-point fan-pressurisation test, in the order in which findings are listed. */
export const fanPressurisationRules: readonly Rule[] = [
  tooFewReadings,
  highestPressure,
  zeroFlowSamples,
  zeroFlowLimit,
  exponentRange,
  correlation,
  deviceRange,
  oneDirection,
  lowestPressure,
  readingSpacing,
  pressureCeiling,
  temperatureHeight,
  wind,
  calibrationExpired,
  averagingTime,
  volumeBasis,
  assumedPressure,
  directionsDiffer,
  extrapolatedTarget,
  outlier,
  duplicateReading,
  signConvention,
  assumedHumidity,
  assumedReferenceDensity,
  missingRanges,
  missingBasis,
  missingPreparation,
  missingTarget,
  preparationDeparts,
  preparationBlank,
  preparationPurpose,
  cautionsUnanswered,
  cautionContradicted,
  takeOffUsed,
  takeOffParts,
  leakLog,
]

/** The same list with some rules taken out and others put in their place or at its head. */
export function changedRules(
  rules: readonly Rule[],
  change: { readonly without?: readonly Rule[]; readonly first?: readonly Rule[] },
): readonly Rule[] {
  return [...(change.first ?? []), ...rules.filter((rule) => !change.without?.includes(rule))]
}

/** What only a line through many readings can be asked. */
const lineRules = [
  tooFewReadings,
  highestPressure,
  exponentRange,
  correlation,
  lowestPressure,
  readingSpacing,
  outlier,
]

/** The rules of a test that repeats its readings at one or two stations. */
export const repeatedReadingRules: readonly Rule[] = changedRules(fanPressurisationRules, {
  first: [stationReadings],
  without: [...lineRules, duplicateReading],
})

export { bothDirectionsOf, directionOf, leakageAreaError } from './procedure.js'
export {
  assumedAltitude,
  assumedExponent,
  correlation,
  exponentRange,
  temperatureHeight,
  temperatureHeightAs,
}
