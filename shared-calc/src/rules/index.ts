import { assumedHumidity, assumedPressure, assumedReferenceDensity, signConvention } from './assumptions.js'
import { missingBasis, missingPreparation, missingTarget, volumeBasis } from './building.js'
import { temperatureHeight, wind } from './conditions.js'
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
