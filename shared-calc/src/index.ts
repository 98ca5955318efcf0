// The only public door, in the order of the job: read, evaluate, show.

export { CALCULATION_VERSION } from './calculation-version.js'
export type { CellMap } from './cell-map.js'
export { type EvaluateOptions, evaluate, evaluateInput, evaluateWorked } from './evaluate.js'
export { formulaList, type ListedFormula } from './formulas/list.js'
export * from './leaks/index.js'
export * from './library/index.js'
export { type Method, methodById, methods } from './methods/index.js'
export * from './plan/index.js'
export * from './preparation/index.js'
export { InputError, type Problem, problemLine } from './problem.js'
export * from './record/index.js'
export * from './site/index.js'
export * from './take-off/index.js'
export { type LimitRule, type TargetPreset, targetPresets } from './targets/presets.js'
export { changeBetween, type LeakageChange } from './uncertainty/change.js'
export { type DefaultUncertainty, defaultUncertainties } from './uncertainty/defaults.js'
export { type Between, type ColumnsCurve, curveOfColumns, moistAirDensity } from './work/curve-of-columns.js'
export { type CurvePoint, curvePoints } from './work/curve-points.js'
export { lowestUsablePressure } from './work/lowest-usable-pressure.js'
export {
  ASSUMED_EXPONENT,
  type RunningEstimate,
  runningEstimate,
  type UnfinishedTest,
} from './work/running-estimate.js'
export type { WorkedTest } from './work/worked-test.js'
