/**
 * The words a record chooses from, without a schema: the schemas check against these lists, and a form can offer them before
 * the schemas are loaded. Where a record may hold more kinds of a thing in time, the word is added here.
 */

export const runDirections = ['depressurisation', 'pressurisation'] as const

/** The direction that a run in the other direction has. */
export const oppositeDirection = (
  direction: (typeof runDirections)[number],
): (typeof runDirections)[number] =>
  direction === 'depressurisation' ? 'pressurisation' : 'depressurisation'

export const volumeBases = ['net', 'overall internal'] as const

/** Where the wind was measured. */
export const windPlaces = ['ground', 'meteorological'] as const

export const stages = ['fabric', 'after services', 'acceptance', 'retest'] as const

/** Preparation as ISO 9972 (methods 1 to 3), EN 13829 (methods A and B) and CAN/CGSB-149.10 name it. */
export const preparationMethods = [
  'method 1',
  'method 2',
  'method 3',
  'method A',
  'method B',
  'as-operated',
  'closed-up',
] as const

/** Whether adjoining spaces were held at the pressure of the tested one, so that only leaks to outdoors count. */
export const adjoiningSpaces = ['guarded', 'unguarded'] as const

/** Which directions a target counts: their mean, each by itself, or any one of them (mean if both were run). */
export const targetDirections = ['mean', 'each', 'any'] as const

/** Openings that every preparation list covers. */
export const openingKinds = [
  'external windows',
  'external doors and hatches',
  'internal doors',
  'natural ventilation openings',
  'whole-building ventilation',
  'intermittent extract',
  'cooker hood',
  'drain traps',
  'flues and fireplaces',
  'letter boxes and keyholes',
  'service entries',
  'loft hatch',
  'other',
] as const

export const openingStates = ['closed', 'sealed', 'filled', 'off', 'open', 'not present'] as const

/** Dangers that a tester looks for before a fan is switched on. */
export const cautionKinds = [
  'fuel-burning appliances',
  'contaminated dust',
  'persons',
  'ceilings and membranes',
  'locked doors',
  'fan and cables',
  'safety systems',
] as const

export const cautionAnswers = ['taken care of', 'does not apply'] as const

export const leakKinds = [
  'service penetration',
  'socket or chase',
  'window or door seal',
  'window or door frame',
  'wall to floor',
  'wall to roof',
  'stack or duct',
  'membrane lap',
  'hatch',
  'device opening',
  'other',
] as const

/** How a leak was found. */
export const waysOfFinding = [
  'hand',
  'smoke',
  'anemometer',
  'thermal camera',
  'listening',
  'fog',
  'sight',
  'other',
] as const

/** Sizes of leaks as people say them; `sizeWords` says what each is taken for. */
export const sizesInWords = [
  'pinhole',
  'pencil',
  'finger',
  'fist',
  'hairline gap',
  'card gap',
  'pencil gap',
  'finger gap',
] as const

/** In which volume a space counts: walls and floors between rooms count in the overall internal volume only. */
export const countedIn = ['both', 'net', 'overall internal'] as const

/** Whether a part of a take-off is added or taken off. */
export const partUses = ['add', 'exclude'] as const

export const elementKinds = ['wall', 'roof', 'floor', 'window', 'door', 'other'] as const

/** Solids that rooms, stairs, voids and sloped ceilings are made up of. */
export const solidShapes = ['box', 'floor area', 'under slopes', 'wedge', 'pyramid', 'frustum'] as const

/** Plane figures that the elements of the envelope are made up of. */
export const figureShapes = ['rectangle', 'triangle', 'trapezium', 'area'] as const

/** `"a", "b" or "c"`, or `"a"` alone, as an error names what may be chosen. */
export function anyOf(words: readonly string[]): string {
  const quoted = words.map((word) => `"${word}"`)
  return quoted.length < 2 ? quoted.join() : `${quoted.slice(0, -1).join(', ')} or ${quoted.at(-1)}`
}
