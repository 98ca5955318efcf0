export { lengthUnits, toMetres } from './length-units.js'
export { parseTakeOff, TAKE_OFF_FORMAT, TakeOffRequest } from './request.js'
export {
  measureTakeOff,
  TAKE_OFF_RESULT_FORMAT,
  TakeOffResult,
  type Total,
  takeOffResult,
} from './result.js'
export { type WorkedTakeOff, workTakeOff } from './work-take-off.js'
