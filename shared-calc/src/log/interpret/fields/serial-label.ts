import { type Label, says } from '../words/label.js'

/** A word for a serial number, in the languages of logs. */
const SERIAL =
  /^(?:serial|serialno|serialnumber|serien?|serieno|serienr|seriennr|seriennummer|serienummer|seriel|matricola|matricula|seryjny|geratenummer|geratenr|apparaatnummer|sn)$/

/** Which instrument's serial number a label asks for. */
export function serialIn(label: Label): 'deviceSerial' | 'gaugeSerial' | undefined {
  if (label.tokens.length > 8 || !label.tokens.some((token) => SERIAL.test(token))) return undefined
  // A gauge for the pressure of the fan is a gauge.
  if (says(label, 'gauge')) return 'gaugeSerial'
  return says(label, 'fan') ? 'deviceSerial' : undefined
}
