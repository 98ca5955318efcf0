import { evenPressure, evenPressureNotRead, instrumentAccuracy } from './accuracy.js'
import {
  assumedHumidity,
  assumedPressure,
  assumedReferenceDensity,
  flowStatedAt,
  signConvention,
} from './assumptions.js'
import { missingBasis, missingPreparation, missingTarget, volumeBasis, volumeShape } from './building.js'
import { barometerAltitude, outdoorTemperature, temperatureHeight, wind } from './conditions.js'
import { correlation, exponentRange, extrapolatedTarget, outlier } from './curve.js'
import { implausibleValue, textCharacters } from './entries.js'
import { averagingTime, calibrationExpired, deviceRange, missingRanges } from './instruments.js'
import { leakageChange } from './leakage-change.js'
import {
  assumedAltitude,
  assumedExponent,
  bothDirections,
  directionsDiffer,
  leakageAreaError,
  methodDirection,
  oneDirection,
  stationReadings,
} from './procedure.js'
import { readingSpan } from './reading-span.js'
import {
  duplicateReading,
  highestPressure,
  identicalRuns,
  lowestPressure,
  pressureCeiling,
  readingSpacing,
  tooFewReadings,
  topPressure,
} from './readings.js'
import { type Rule, silent } from './rule.js'
import { targetAdjoiningSpaces, targetAlternatives, targetArea, targetPreparation } from './target.js'
import { zeroFlowCopied, zeroFlowLimit, zeroFlowMoved, zeroFlowSamples } from './zero-flow.js'
import { zeroFlowAllZero, zeroFlowMisread } from './zero-flow-doubts.js'

export type { Rule, RuleContext } from './rule.js'

/** Rules that need a line through many readings. */
const ofALine =
  (rule: Rule): Rule =>
  (context) =>
    context.method.stations ? silent : rule(context)

/**
 * Every rule of a test, in the order in which findings are listed. A rule looks at the method's limits and is silent
 * where the method sets none, so no list of rules is kept by method.
 */
export const rules: readonly Rule[] = [
  assumedExponent,
  assumedAltitude,
  bothDirections,
  methodDirection,
  leakageAreaError,
  stationReadings,
  ofALine(tooFewReadings),
  ofALine(highestPressure),
  zeroFlowSamples,
  zeroFlowLimit,
  exponentRange,
  readingSpan,
  correlation,
  deviceRange,
  oneDirection,
  ofALine(lowestPressure),
  ofALine(readingSpacing),
  ofALine(topPressure),
  pressureCeiling,
  temperatureHeight,
  wind,
  outdoorTemperature,
  instrumentAccuracy,
  evenPressure,
  evenPressureNotRead,
  calibrationExpired,
  averagingTime,
  volumeBasis,
  targetPreparation,
  targetAdjoiningSpaces,
  targetArea,
  textCharacters,
  assumedPressure,
  flowStatedAt,
  implausibleValue,
  volumeShape,
  barometerAltitude,
  directionsDiffer,
  extrapolatedTarget,
  ofALine(outlier),
  ofALine(leakageChange),
  ofALine(duplicateReading),
  identicalRuns,
  zeroFlowCopied,
  zeroFlowAllZero,
  ofALine(zeroFlowMisread),
  ofALine(zeroFlowMoved),
  signConvention,
  assumedHumidity,
  assumedReferenceDensity,
  missingRanges,
  missingBasis,
  missingPreparation,
  missingTarget,
  targetAlternatives,
]
