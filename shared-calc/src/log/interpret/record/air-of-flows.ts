import type { Direction } from '../../../contract/record/index.js'
import { formPlaces, type View } from '../grid/view.js'
import { readLabel, says } from '../words/label.js'

/** What a line of the form says of the air that the flows are flows of. */
export interface AirOfFlows {
  /** Left out where its words do not decide it. */
  readonly air?: 'device air' | 'reference air'
  readonly text: string
  readonly cell: string
}

const STATED =
  / (?:stated|given|referred|reported|related|expressed|bezogen|angegeben|exprimes?|rapportes?|ramenes?|betrokken|opgegeven|angivet|angitt|angivna|expresado|espress[ao]|podan[ey]) /
const REFERENCE =
  / (?:reference|referenz\p{L}*|bezugs\p{L}*|referentie\p{L}*|referencia|riferimento|referans\p{L}*|calibration|kalibrier\p{L}*|etalonnage) /u
const DEVICE =
  / (?:device|fan|as read|displayed|indicated|uncorrected|angezeigt|abgelesen|gerat|geblase|unkorrigiert|affiche|lu|ventilateur|toestel|afgelezen) /

/** "Flow stated at | reference air", "Volumenstrom bezogen auf: Innenluft": in a line of its own, the air in words. */
export function airOfFlows(
  views: readonly View[],
  directions: readonly (Direction | undefined)[],
): AirOfFlows | undefined {
  for (const view of views)
    for (const [row, column] of formPlaces(view)) {
      const own = view.text(row, column)
      if (own === undefined || own.length > 80) continue
      const [front = '', behind] = own.split(/:\s*(?=\S)/)
      const label = readLabel(front)
      if (label.tokens.length > 6 || !says(label, 'flow') || !STATED.test(label.padded)) continue
      const value = behind ?? view.text(row, view.right(row, column) + 1)
      if (value === undefined || value.length > 60) continue
      const air = airIn(value, directions)
      const text = behind === undefined ? `${front.trim()} ${value}` : own
      return { ...(air ? { air } : {}), text, cell: view.address(row, column) }
    }
  return undefined
}

function airIn(text: string, directions: readonly (Direction | undefined)[]): AirOfFlows['air'] {
  const label = readLabel(text)
  const [reference, device] = [REFERENCE.test(label.padded), DEVICE.test(label.padded)]
  if (reference !== device) return reference ? 'reference air' : 'device air'
  if (reference) return undefined
  // The device passes the air of the house while it blows out, and that of outdoors while it blows in.
  const side = says(label, 'inside') === says(label, 'outside') ? undefined : says(label, 'inside')
  const passed = side === undefined ? undefined : side ? 'depressurisation' : 'pressurisation'
  return passed && directions.every((one) => one === passed) ? 'device air' : undefined
}
