export { crossingPressure, type QuantityChange, type StageChange, stageChange } from './stage-change.js'
