// The only public door, in the order of the job: read, evaluate, show.

export {
  assessBuilding,
  BUILDING_FORMAT,
  type BuildingResult,
} from './assessment/building/building-result.js'
export { homesTargetText } from './assessment/building/home.js'
export {
  type BuildingRequest,
  type BuildingRule,
  buildingRules,
  ruleWords,
} from './assessment/building/work-building.js'
export { changeBetween, type LeakageChange } from './assessment/change.js'
export type { AssessedTest } from './assessment/evaluate.js'
export { type EvaluateOptions, evaluate, evaluateInput, evaluateWorked } from './assessment/evaluate.js'
export {
  type Hole,
  LEAK_REPORT_FORMAT,
  LeakReport,
  leakReport,
  reportLeaks,
} from './assessment/leak-report.js'
export {
  STAGES_FORMAT,
  type StageResult,
  type StagesResult,
  stagesResult,
} from './assessment/stages/stages-result.js'
export {
  type SiteStage,
  type StagesRequest,
  siteStages,
  USUAL_CONFIDENCE,
  usualShares,
  workStages,
} from './assessment/stages/work-stages.js'
export { CALCULATION_VERSION } from './catalogue/calculation-version.js'
export * from './catalogue/figures.js'
export { decimalsBeside, type Judged, judgedTexts, limitedName, unitText } from './catalogue/shown-figure.js'
export { cited } from './catalogue/sources.js'
export { capital, counted, dayInWords, dayOf, outcomeWords, visible, withMinus } from './catalogue/words.js'
export { type FileKind, refuseOtherKind } from './contract/file-kind.js'
export {
  Calibration,
  DEVICE_FORMAT,
  deviceForRecord,
  entryName,
  GAUGE_FORMAT,
  gaugeForRecord,
  LibraryDevice,
  LibraryGauge,
  LibraryTarget,
  TARGET_FORMAT,
  targetForRecord,
} from './contract/library.js'
export { didYouMean, nearest } from './contract/nearest.js'
export type { CellMap } from './contract/problem.js'
export { InputError, type Problem, problemLine } from './contract/problem.js'
export * from './contract/record/index.js'
export { once } from './engine/once.js'
export { governingCriterion } from './evaluation/verdict.js'
export {
  type Between,
  type ColumnsCurve,
  curveOfColumns,
  moistAirDensity,
} from './evaluation/work/curve-of-columns.js'
export { type CurvePoint, curvePoints } from './evaluation/work/curve-points.js'
export {
  ASSUMED_EXPONENT,
  lowestUsablePressure,
  type RunningEstimate,
  runningEstimate,
  type UnfinishedTest,
} from './evaluation/work/running-estimate.js'
export { formulaList, type ListedFormula } from './formulas/list.js'
export { type Method, methodById, methods } from './methods/index.js'
export { fewestReadings } from './methods/method.js'
export { sizeWords, type WorkedLeaks, workLeaks } from './site/leaks/work-leaks.js'
export { withFirmsEquipment } from './site/plan/firms-devices.js'
export { PLAN_FORMAT, PlanRequest, parsePlan, planOfRecord } from './site/plan/request.js'
export { makePlan, PLAN_RESULT_FORMAT, PlanResult, planResult } from './site/plan/result.js'
export { type WorkedPlan, workPlan } from './site/plan/work-plan.js'
export {
  askedOf,
  type ListedOpening,
  type PreparationMethod,
  preparationList,
} from './site/preparation/asks.js'
export { allCautions, CAUTIONS_DEFER, cautionName, cautionTexts } from './site/preparation/cautions.js'
export { type CheckedOpening, checkPreparation } from './site/preparation/check.js'
export { lengthUnits, toMetres } from './site/take-off/length-units.js'
export {
  measureTakeOff,
  parseTakeOff,
  TAKE_OFF_FORMAT,
  TAKE_OFF_RESULT_FORMAT,
  TakeOffRequest,
  TakeOffResult,
  type Total,
  takeOffResult,
} from './site/take-off/result.js'
export { type WorkedTakeOff, workTakeOff } from './site/take-off/work-take-off.js'
export { NextReading, nextReading, type Standing } from './site/while-reading/next-reading.js'
export { estimateWhileReading, UnfinishedRequest } from './site/while-reading/unfinished.js'
export { UnderWay, WhileReading, whileReading } from './site/while-reading/while-reading.js'
export { type LimitRule, type TargetPreset, targetPresets } from './targets/index.js'
export { type DefaultUncertainty, defaultUncertainties } from './uncertainty/defaults.js'
export { probabilityText } from './uncertainty/words.js'
