import { atReferencePressure, atReferencePressureHole } from '../formulas/at-reference-pressure.js'
import { fitScatter, studentisedResiduals, weightedFitScatter } from '../formulas/confidence.js'
import { leakageCurve, weightedLeakageCurve } from '../formulas/leakage-curve.js'
import {
  correctedAlready,
  onePointCurve,
  onePointWithFactors,
  twoPointCurve,
} from '../formulas/repeated-readings.js'
import { standardAir } from '../formulas/standard-air.js'
import {
  fittedLineSensitivity,
  onePointSensitivity,
  twoPointSensitivity,
} from '../formulas/uncertainty-curve.js'
import { standardAirViscous } from '../formulas/viscosity.js'
import type { CurveChapters } from './method.js'

/** A multi-point test: least squares through the logarithms, corrected to reference density. */
export const fittedLine: CurveChapters = {
  curve: leakageCurve,
  scatter: fitScatter,
  residuals: studentisedResiduals,
  standard: standardAir,
  rate: atReferencePressure,
  sensitivity: fittedLineSensitivity,
}

/** The same, corrected to reference density and viscosity. */
export const fittedLineViscous: CurveChapters = { ...fittedLine, standard: standardAirViscous }

/** A line weighted by flow squared, with the leakage area of a sharp-edged hole. */
export const weightedLine: CurveChapters = {
  ...fittedLine,
  curve: weightedLeakageCurve,
  scatter: weightedFitScatter,
  rate: atReferencePressureHole,
}

/** Readings repeated at one station, the exponent assumed. */
export const onePoint: CurveChapters = {
  curve: onePointCurve,
  standard: standardAirViscous,
  rate: atReferencePressure,
  sensitivity: onePointSensitivity,
}

/** Readings repeated at two stations. */
export const twoPoint: CurveChapters = { ...onePoint, curve: twoPointCurve, sensitivity: twoPointSensitivity }

/** One station, the flow corrected by factors for temperature and altitude. */
export const onePointFactors: CurveChapters = {
  ...onePoint,
  curve: onePointWithFactors,
  standard: correctedAlready,
}
