import { type Chapter, sourceText, symbolText, toMathml, toText } from '../engine/index.js'
import { moistAir, standardAtmosphere } from './air.js'
import { assumedExponentCurve } from './assumed-exponent.js'
import { atReferencePressure, atReferencePressureHole } from './at-reference-pressure.js'
import {
  correctionOfHomes,
  meanOfHomes,
  ownOfHomes,
  sampleOfHomes,
  sharedByHomes,
  uncertaintyOfHomes,
} from './building-of-homes.js'
import { fitDeviation, fitScatter, studentisedResiduals, weightedFitScatter } from './confidence.js'
import { derivedRates, meanOfDirections, normalisedLeakageArea } from './derived.js'
import { bothErrorsLine } from './fit-both-errors.js'
import { fitCompared } from './fit-compared.js'
import { organicLine } from './fit-organic.js'
import {
  flowDevice,
  flowDeviceStandard,
  fromReferenceAir,
  severalDevices,
  standardFromDeviceAir,
  standardFromReferenceAir,
  statedAir,
} from './flow-device.js'
import {
  estimatedHoles,
  flowThroughHoles,
  gaps,
  holeSizes,
  limitBeforeAgeing,
  ratesCompared,
  roundHoles,
} from './holes.js'
import { leakageCurve, weightedLeakageCurve } from './leakage-curve.js'
import { leakageStep } from './leakage-step.js'
import { buildingShape, lowestPressure, stackMeasure } from './limits.js'
import { normalFlow } from './normal-flow.js'
import { allowedLeakage, expectedFlows, provableLeakage } from './plan-flows.js'
import { pressureSpan, pressuresToSet, stationsToSet } from './plan-pressures.js'
import {
  correctedAlready,
  onePointCurve,
  onePointWithFactors,
  statedExtension,
  twoPointCurve,
} from './repeated-readings.js'
import { averageOfSeries } from './series-average.js'
import { stackPressure } from './stack-pressure.js'
import { stageAllowance, stageProbability, stageUse } from './stage-allowance.js'
import { changeBetweenTests, crossing, spreadOfMean } from './stage-change.js'
import { standardAir } from './standard-air.js'
import { givenAreas, straightFigures, trapeziums } from './take-off-figures.js'
import { areaTimesHeight, frustums, straightSolids, underSlopes } from './take-off-solids.js'
import { areaTotal, basesCompared, statedCompared, volumeTotal } from './take-off-totals.js'
import {
  airSensitivity,
  densityCorrectionSlope,
  deviceAverageUncertainty,
  flowAverageUncertainty,
  readingUncertainty,
  relativeUncertainty,
  statedAccuracy,
  statedShare,
} from './uncertainty-air.js'
import { conformity, meanSensitivity, uncertaintyBudget, uncertaintyOfChange } from './uncertainty-budget.js'
import { fittedLineSensitivity, onePointSensitivity, twoPointSensitivity } from './uncertainty-curve.js'
import { allMet, bothMet, correlationOfFigures } from './uncertainty-joint.js'
import { leakMixture } from './uncertainty-leaks.js'
import { stackUncertainty, windFromForce, windFromStation, windUncertainty } from './uncertainty-weather.js'
import { zeroFlowChange, zeroFlowSpread, zeroFlowUncertainty } from './uncertainty-zero-flow.js'
import {
  ageing,
  areaToSeal,
  comparison,
  extendedValue,
  flowThroughAllowedArea,
  leakageToSeal,
  limitBefore,
  limitOfPlaces,
  roundedValue,
  sampledValue,
} from './verdict.js'
import { standardAirViscous } from './viscosity.js'
import { furtherReading, intervalOfFewReadings, zeroFlowDrift } from './while-reading.js'
import { zeroFlowPeriod } from './zero-flow.js'

/** Every chapter with the file it is in, in the order of the calculation. */
export const chapters: readonly { readonly file: string; readonly chapter: Chapter }[] = [
  { file: 'air.ts', chapter: standardAtmosphere },
  { file: 'air.ts', chapter: moistAir },
  { file: 'zero-flow.ts', chapter: zeroFlowPeriod },
  { file: 'flow-device.ts', chapter: flowDevice },
  { file: 'flow-device.ts', chapter: flowDeviceStandard },
  { file: 'flow-device.ts', chapter: fromReferenceAir },
  { file: 'flow-device.ts', chapter: standardFromReferenceAir },
  { file: 'flow-device.ts', chapter: standardFromDeviceAir },
  { file: 'flow-device.ts', chapter: statedAir },
  { file: 'flow-device.ts', chapter: severalDevices },
  { file: 'normal-flow.ts', chapter: normalFlow },
  { file: 'leakage-curve.ts', chapter: leakageCurve },
  { file: 'confidence.ts', chapter: fitScatter },
  { file: 'confidence.ts', chapter: studentisedResiduals },
  { file: 'confidence.ts', chapter: fitDeviation },
  { file: 'leakage-step.ts', chapter: leakageStep },
  { file: 'standard-air.ts', chapter: standardAir },
  { file: 'at-reference-pressure.ts', chapter: atReferencePressure },
  { file: 'derived.ts', chapter: derivedRates },
  { file: 'derived.ts', chapter: normalisedLeakageArea },
  { file: 'derived.ts', chapter: meanOfDirections },
  { file: 'limits.ts', chapter: lowestPressure },
  { file: 'limits.ts', chapter: stackMeasure },
  { file: 'limits.ts', chapter: buildingShape },
  { file: 'verdict.ts', chapter: sampledValue },
  { file: 'verdict.ts', chapter: extendedValue },
  { file: 'verdict.ts', chapter: roundedValue },
  { file: 'verdict.ts', chapter: limitOfPlaces },
  { file: 'verdict.ts', chapter: limitBefore },
  { file: 'verdict.ts', chapter: comparison },
  { file: 'verdict.ts', chapter: ageing },
  { file: 'verdict.ts', chapter: leakageToSeal },
  { file: 'verdict.ts', chapter: areaToSeal },
  { file: 'verdict.ts', chapter: flowThroughAllowedArea },
  { file: 'take-off-solids.ts', chapter: areaTimesHeight },
  { file: 'take-off-solids.ts', chapter: straightSolids },
  { file: 'take-off-solids.ts', chapter: underSlopes },
  { file: 'take-off-solids.ts', chapter: frustums },
  { file: 'take-off-figures.ts', chapter: givenAreas },
  { file: 'take-off-figures.ts', chapter: straightFigures },
  { file: 'take-off-figures.ts', chapter: trapeziums },
  { file: 'take-off-totals.ts', chapter: volumeTotal },
  { file: 'take-off-totals.ts', chapter: areaTotal },
  { file: 'take-off-totals.ts', chapter: basesCompared },
  { file: 'take-off-totals.ts', chapter: statedCompared },
  { file: 'plan-pressures.ts', chapter: pressureSpan },
  { file: 'plan-pressures.ts', chapter: pressuresToSet },
  { file: 'plan-pressures.ts', chapter: stationsToSet },
  { file: 'plan-flows.ts', chapter: allowedLeakage },
  { file: 'plan-flows.ts', chapter: expectedFlows },
  { file: 'plan-flows.ts', chapter: provableLeakage },
  { file: 'stack-pressure.ts', chapter: stackPressure },
  { file: 'holes.ts', chapter: roundHoles },
  { file: 'holes.ts', chapter: gaps },
  { file: 'holes.ts', chapter: estimatedHoles },
  { file: 'holes.ts', chapter: flowThroughHoles },
  { file: 'holes.ts', chapter: holeSizes },
  { file: 'holes.ts', chapter: limitBeforeAgeing },
  { file: 'holes.ts', chapter: ratesCompared },
  { file: 'assumed-exponent.ts', chapter: assumedExponentCurve },
  { file: 'while-reading.ts', chapter: intervalOfFewReadings },
  { file: 'while-reading.ts', chapter: furtherReading },
  { file: 'while-reading.ts', chapter: zeroFlowDrift },
  { file: 'leakage-curve.ts', chapter: weightedLeakageCurve },
  { file: 'confidence.ts', chapter: weightedFitScatter },
  { file: 'fit-organic.ts', chapter: organicLine },
  { file: 'fit-both-errors.ts', chapter: bothErrorsLine },
  { file: 'fit-compared.ts', chapter: fitCompared },
  { file: 'at-reference-pressure.ts', chapter: atReferencePressureHole },
  { file: 'repeated-readings.ts', chapter: onePointCurve },
  { file: 'repeated-readings.ts', chapter: twoPointCurve },
  { file: 'repeated-readings.ts', chapter: onePointWithFactors },
  { file: 'repeated-readings.ts', chapter: correctedAlready },
  { file: 'repeated-readings.ts', chapter: statedExtension },
  { file: 'viscosity.ts', chapter: standardAirViscous },
  { file: 'uncertainty-weather.ts', chapter: windFromForce },
  { file: 'uncertainty-weather.ts', chapter: windFromStation },
  { file: 'uncertainty-weather.ts', chapter: windUncertainty },
  { file: 'uncertainty-weather.ts', chapter: stackUncertainty },
  { file: 'uncertainty-leaks.ts', chapter: leakMixture },
  { file: 'uncertainty-air.ts', chapter: airSensitivity },
  { file: 'uncertainty-air.ts', chapter: densityCorrectionSlope },
  { file: 'uncertainty-zero-flow.ts', chapter: zeroFlowSpread },
  { file: 'uncertainty-zero-flow.ts', chapter: zeroFlowChange },
  { file: 'uncertainty-zero-flow.ts', chapter: zeroFlowUncertainty },
  { file: 'uncertainty-air.ts', chapter: readingUncertainty },
  { file: 'uncertainty-air.ts', chapter: relativeUncertainty },
  { file: 'uncertainty-air.ts', chapter: statedAccuracy },
  { file: 'uncertainty-air.ts', chapter: statedShare },
  { file: 'uncertainty-air.ts', chapter: flowAverageUncertainty },
  { file: 'uncertainty-air.ts', chapter: deviceAverageUncertainty },
  { file: 'uncertainty-curve.ts', chapter: fittedLineSensitivity },
  { file: 'uncertainty-curve.ts', chapter: onePointSensitivity },
  { file: 'uncertainty-curve.ts', chapter: twoPointSensitivity },
  { file: 'uncertainty-budget.ts', chapter: meanSensitivity },
  { file: 'uncertainty-budget.ts', chapter: uncertaintyBudget },
  { file: 'uncertainty-budget.ts', chapter: conformity },
  { file: 'uncertainty-joint.ts', chapter: correlationOfFigures },
  { file: 'uncertainty-joint.ts', chapter: bothMet },
  { file: 'uncertainty-joint.ts', chapter: allMet },
  { file: 'uncertainty-budget.ts', chapter: uncertaintyOfChange },
  { file: 'stage-change.ts', chapter: spreadOfMean },
  { file: 'stage-change.ts', chapter: changeBetweenTests },
  { file: 'stage-change.ts', chapter: crossing },
  { file: 'series-average.ts', chapter: averageOfSeries },
  { file: 'building-of-homes.ts', chapter: meanOfHomes },
  { file: 'building-of-homes.ts', chapter: sharedByHomes },
  { file: 'building-of-homes.ts', chapter: ownOfHomes },
  { file: 'building-of-homes.ts', chapter: correctionOfHomes },
  { file: 'building-of-homes.ts', chapter: uncertaintyOfHomes },
  { file: 'building-of-homes.ts', chapter: sampleOfHomes },
  { file: 'stage-allowance.ts', chapter: stageAllowance },
  { file: 'stage-allowance.ts', chapter: stageUse },
  { file: 'stage-allowance.ts', chapter: stageProbability },
]

export interface ListedFormula {
  readonly chapter: string
  readonly symbol: string
  readonly name: string
  readonly unit: string
  readonly expression: string
  readonly mathml: string
  readonly source: string
  readonly file: string
}

/** The published list of formulas: what `/v1/formulas` and FORMULAS.md show. */
export function formulaList(): ListedFormula[] {
  return chapters.flatMap(({ file, chapter }) =>
    chapter.steps.map(({ symbol, name, unit, tree, source }) => ({
      chapter: chapter.title,
      symbol: symbolText(symbol),
      name,
      unit,
      expression: toText(tree),
      mathml: toMathml(symbol, tree),
      source: sourceText(source),
      file: `shared-calc/src/formulas/${file}`,
    })),
  )
}
