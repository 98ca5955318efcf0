export { canonicalJson } from '../canonical-json.js'
export { check } from '../check.js'
export { digestOf } from '../sha256.js'
export { Building, VolumeBasis } from './building.js'
export * from './choices.js'
export { Conditions } from './conditions.js'
export * from './evaluation.js'
export * from './evaluation-uncertainty.js'
export { DeviceRange, FlowDevice, PressureGauge, Thermometer } from './instruments.js'
export * from './leaks.js'
export { acceptRecord, parseRecord, pathText, problemsFromZod } from './parse-record.js'
export { placeWords, problemsInWords, problemWords } from './place-words.js'
export * from './plan.js'
export { type PlausibleField, type PlausibleRange, plausibleRanges } from './plausible.js'
export * from './preparation.js'
export { DeviceReading, Direction, Evenness, FlowStatedAt, Reading, Run } from './runs.js'
export * from './take-off.js'
export { PlaneFigure, Solid } from './take-off-shapes.js'
export {
  OwnTarget,
  PresetTarget,
  pressureByName,
  Target,
  TargetDirections,
  TargetQuantity,
} from './target.js'
export {
  AdjoiningSpaces,
  BuildingPreparation,
  Opening,
  OpeningKind,
  OpeningState,
  Stage,
  TestDetails,
} from './test-details.js'
export {
  formatNeeded,
  RECORD_FORMAT,
  RECORD_FORMAT_2,
  RECORD_FORMAT_3,
  RECORD_FORMATS,
  TestRecord,
} from './test-record.js'
export { UncertaintyInputs } from './uncertainty.js'
