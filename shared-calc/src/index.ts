// The only public door, in the order of the job: read, evaluate, show.

export type { AssessedTest } from './assessment/assessed-test.js'
export { changeBetween, type LeakageChange } from './assessment/change.js'
export { type EvaluateOptions, evaluate, evaluateInput, evaluateWorked } from './assessment/evaluate.js'
export {
  type Hole,
  LEAK_REPORT_FORMAT,
  LeakReport,
  leakReport,
  reportLeaks,
} from './assessment/leak-report.js'
export { CALCULATION_VERSION } from './catalogue/calculation-version.js'
export * from './catalogue/figures.js'
export { decimalsBeside } from './catalogue/shown-figure.js'
export { unitText } from './catalogue/units.js'
export { counted, dayInWords, outcomeWords } from './catalogue/words.js'
export type { CellMap } from './contract/cell-map.js'
export * from './contract/library/index.js'
export { InputError, type Problem, problemLine } from './contract/problem.js'
export * from './contract/record/index.js'
export {
  type Between,
  type ColumnsCurve,
  curveOfColumns,
  moistAirDensity,
} from './evaluation/work/curve-of-columns.js'
export { type CurvePoint, curvePoints } from './evaluation/work/curve-points.js'
export { lowestUsablePressure } from './evaluation/work/lowest-usable-pressure.js'
export {
  ASSUMED_EXPONENT,
  type RunningEstimate,
  runningEstimate,
  type UnfinishedTest,
} from './evaluation/work/running-estimate.js'
export { formulaList, type ListedFormula } from './formulas/list.js'
export { type Method, methodById, methods } from './methods/index.js'
export * from './site/leaks/index.js'
export * from './site/plan/index.js'
export * from './site/preparation/index.js'
export * from './site/take-off/index.js'
export * from './site/while-reading/index.js'
export { type LimitRule, type TargetPreset, targetPresets } from './targets/index.js'
export { type DefaultUncertainty, defaultUncertainties } from './uncertainty/defaults.js'
