import { atReferencePressure } from '../formulas/at-reference-pressure.js'
import { fitScatter, studentisedResiduals } from '../formulas/confidence.js'
import { leakageCurve } from '../formulas/leakage-curve.js'
import { standardAir } from '../formulas/standard-air.js'
import { fittedLineSensitivity } from '../formulas/uncertainty-curve.js'
import type { CurveChapters } from './method.js'

/** Formulas of a multi-point test: least squares through the logarithms, corrected to reference density. */
export const fittedLine: CurveChapters = {
  curve: leakageCurve,
  scatter: fitScatter,
  residuals: studentisedResiduals,
  standard: standardAir,
  rate: atReferencePressure,
  sensitivity: fittedLineSensitivity,
}
