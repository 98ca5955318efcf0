import type { KnownUnit } from '../../cells/units.js'
import { type Label, readLabel, says } from '../words/label.js'
import { momentIn } from '../words/moments.js'
import { serialIn } from './serial-label.js'

/** Kinds of single values a log holds beside its readings. */
export type FieldName =
  | 'volume'
  | 'envelopeArea'
  | 'lossArea'
  | 'floorArea'
  | 'area'
  | 'height'
  | 'altitude'
  | 'indoorTemperature'
  | 'outdoorTemperature'
  | 'temperatures'
  | 'barometer'
  | 'indoorHumidity'
  | 'outdoorHumidity'
  | 'windSpeed'
  | 'beaufort'
  | 'date'
  | 'name'
  | 'address'
  | 'client'
  | 'tester'
  | 'testId'
  | 'method'
  | 'stage'
  | 'volumeBasis'
  | 'preparation'
  | 'notes'
  | 'n50'
  | 'q50'
  | 'qE50'
  | 'exponent'
  | 'rSquared'
  | 'coefficient'
  | 'target'
  | 'deviceSerial'
  | 'gaugeSerial'

type ValueKind = 'number' | 'numbers' | 'date' | 'text'

/** What a label with a value beside it names. Undefined where nothing here knows it. */
export function classify(
  label: Label,
  kind: ValueKind,
  unit: KnownUnit | undefined,
  value: number | undefined,
): FieldName | undefined {
  if (label.tokens.length === 0 && !label.unit) return undefined
  if (kind === 'date')
    return isCalibration(label)
      ? undefined
      : says(label, 'date') || (label.tokens.length <= 3 && hasWord(label)) || isOfATest(label)
        ? 'date'
        : undefined
  const serial = kind === 'text' || (kind === 'number' && !unit) ? serialIn(label) : undefined
  if (serial) return serial
  if (kind === 'text') return ofText(label) ?? (isTarget(label) ? 'target' : undefined)
  // "Uncertainty of the volume" is no second volume.
  if (says(label, 'uncertainty')) return undefined
  const result = resultOf(label, unit)
  if (result) return result
  if (kind === 'numbers') {
    const temperatures =
      (unit === undefined || unit.kind === 'temperature') &&
      (says(label, 'temperature') || (says(label, 'inside') && says(label, 'outside')))
    return temperatures ? 'temperatures' : undefined
  }
  return ofNumber(label, unit, value) ?? (isTarget(label) && !unit ? 'target' : undefined)
}

/** "Target", "Anforderung": what a result must not exceed, and no pressure that was aimed at. */
const isTarget = (label: Label): boolean =>
  label.tokens.length <= 8 &&
  (says(label, 'limit') || says(label, 'target')) &&
  !(['pressure', 'zero', 'wind', 'temperature', 'date'] as const).some((one) => says(label, one))

/** "G-0098" above a day is a number of something, and no word for that day. */
const hasWord = ({ tokens }: Label): boolean => tokens.some((token) => /\p{L}{2}/u.test(token))

/** "Second test (after sealing) | 3 June": the title of a test with its day. */
const isOfATest = (label: Label): boolean =>
  label.tokens.length <= 8 && says(label, 'test') && !says(label, 'former') && !says(label, 'target')

export const isCalibration = ({ tokens }: Label): boolean =>
  tokens.some((token) =>
    /^(cal|calib|kalib|etalon|due|valid|expiry|ijk|until|printed|exported|export)/.test(token),
  )

const RESULT: Record<string, FieldName> = {
  n50: 'n50',
  ach: 'n50',
  ach50: 'n50',
  ac50: 'n50',
  q50: 'q50',
  v50: 'q50',
  cfm50: 'q50',
  qe50: 'qE50',
  ap50: 'qE50',
  r2: 'rSquared',
  rsq: 'rSquared',
  'r²': 'rSquared',
}

function resultOf(label: Label, unit: KnownUnit | undefined): FieldName | undefined {
  const [first = '', second = ''] = label.tokens
  for (const token of label.tokens) {
    const found = RESULT[token]
    if (found === 'q50' && isPerArea(label)) return 'qE50'
    // "Luftvolumen V50 | m³" is the volume.
    if (found === 'q50' && unit?.kind === 'volume') continue
    if (found) return found
  }
  if (AT_50.test(label.text)) {
    const plain = readLabel(label.text.replace(AT_50, ' '))
    if (isPerArea(plain) || plain.padded.includes(' air permeability ')) return 'qE50'
    if (AIR_CHANGE.test(plain.padded)) return 'n50'
    if (
      says(plain, 'flow') &&
      !says(plain, 'target') &&
      (unit?.kind === 'flow' || plain.unit?.kind === 'flow')
    )
      return 'q50'
  }
  if (label.padded.includes(' air change ') || label.padded.includes(' luftwechsel ')) return 'n50'
  if (label.padded.includes(' air permeability ') && !unit) return 'qE50'
  if (label.tokens.length <= 3 && !unit) {
    if (
      (first === 'n' && second !== 'o') ||
      first === 'exponent' ||
      (says(label, 'exponent') && label.tokens.some((token) => /expon/.test(token)))
    )
      return 'exponent'
    if (first === 'c' || first === 'coefficient' || first === 'cenv' || first === 'cl') return 'coefficient'
    if (label.padded.includes(' r 2 ')) return 'rSquared'
  }
  return undefined
}

/** "Flow at 50 Pa (m³/h)", "débit à 50 Pa", "Leckagestrom bei 50 Pa". */
const AT_50 = /(?:@|(?<!\p{L})(?:at|bei|à|a|bij|ved|vid|przy|při|pri|per))\s?[-−±]?50\s?Pa(?!\p{L})/iu

const AIR_CHANGE =
  / (?:air changes?|ach|luftwechsel\p{L}*|renouvellement|ventilatievoud|luftskifte\p{L}*|luftomsattning) /u

/** "q50 (m³/h·m²)": per area, not a flow. */
const isPerArea = ({ text }: Label): boolean =>
  /m[²2^]{0,2}(?:\s*\))?\s*$/.test(text.trim()) && /m[³3]/.test(text)

function ofNumber(
  label: Label,
  unit: KnownUnit | undefined,
  value: number | undefined,
): FieldName | undefined {
  const kind = unit?.kind
  const wind = says(label, 'wind')
  if (wind && (kind === 'speed' || kind === undefined))
    return label.tokens.some((token) => /^(beaufort|bft|force|starke|windstarke|vindstyrke)$/.test(token))
      ? 'beaufort'
      : kind === 'speed'
        ? 'windSpeed'
        : undefined
  if (says(label, 'humidity') && (kind === 'fraction' || kind === undefined)) {
    const side = sideOf(label)
    return side === 'inside' ? 'indoorHumidity' : side === 'outside' ? 'outdoorHumidity' : undefined
  }
  if (kind === 'volume' || (kind === undefined && says(label, 'volume') && !says(label, 'flow')))
    return 'volume'
  if (
    kind === 'area' ||
    (kind === undefined &&
      (says(label, 'area') || says(label, 'floor') || says(label, 'envelope')) &&
      !says(label, 'pressure') &&
      !says(label, 'temperature'))
  )
    return areaOf(label)
  if (kind === 'pressure')
    return says(label, 'zero') || (!says(label, 'barometer') && !isBarometer(value, unit))
      ? undefined
      : 'barometer'
  if (kind === undefined && says(label, 'barometer')) return 'barometer'
  if (kind === 'temperature' || (kind === undefined && isTemperature(label, value))) {
    // "Temp. in fan" is that of the air through the device.
    if (says(label, 'device')) return undefined
    const side = sideOf(label)
    return side === 'inside' ? 'indoorTemperature' : side === 'outside' ? 'outdoorTemperature' : undefined
  }
  if (unit?.aboveSea) return 'altitude'
  if (kind === 'length' && says(label, 'height') && !says(label, 'room'))
    return says(label, 'altitude') ? 'altitude' : 'height'
  if ((kind === 'length' || kind === undefined) && says(label, 'altitude'))
    return kind ? 'altitude' : undefined
  // "Après essai | −0.9" is a value after the test, and no number of it.
  if (
    kind === undefined &&
    (says(label, 'testId') || says(label, 'name')) &&
    momentIn(label.text) === undefined
  )
    return ofText(label)
  return undefined
}

/** A pressure that only the air outside can have. */
export function isBarometer(value: number | undefined, unit: KnownUnit | undefined): boolean {
  if (value === undefined || !unit) return false
  const inPa = {
    hPa: 100,
    mbar: 100,
    kPa: 1000,
    bar: 1e5,
    Pa: 1,
    inHgConventional: 3386.389,
    mmHgConventional: 133.3224,
  }[unit.unit]
  return inPa !== undefined && value * inPa > 60_000 && value * inPa < 120_000
}

/** "Hors plancher bas": the envelope area without its lowest floor. */
const WITHOUT_FLOOR = /^(?:hors|sans|without|excl|excluding|exclusive|excluded|ohne|zonder|less)$/

/** In "surface plancher" it is the word for an area. */
const ALSO_AREA = /^surface$/

function areaOf(label: Label): FieldName {
  const floor = says(label, 'floor')
  const ofShell = label.tokens.filter((token) => !ALSO_AREA.test(token))
  const envelope = floor
    ? says({ ...label, tokens: ofShell, padded: ` ${ofShell.join(' ')} ` }, 'envelope')
    : says(label, 'envelope')
  if (label.tokens.includes('atbat')) return 'lossArea'
  if (floor && label.tokens.some((token) => WITHOUT_FLOOR.test(token)))
    return envelope || label.tokens.some((token) => ALSO_AREA.test(token)) ? 'lossArea' : 'area'
  if (envelope && !floor) return 'envelopeArea'
  if (floor && !envelope) return 'floorArea'
  return envelope ? 'envelopeArea' : 'area'
}

/** Inside or outside; "in" before a unit is no place, and "room in" never outside. */
export function sideOf(label: Label): 'inside' | 'outside' | undefined {
  if (label.tokens.length > 3 && label.tokens.includes('to')) {
    // "Thermostat set to": in a sentence it is the word, and no T_o.
    const tokens = label.tokens.filter((token) => token !== 'to')
    return sideOf({ ...label, tokens, padded: ` ${tokens.join(' ')} ` })
  }
  const outside = says(label, 'outside')
  const inside = says(label, 'inside')
  if (outside && inside) {
    const others = label.tokens.filter(
      (token) => token !== 'in' && token !== 'i' && token !== 'o' && token !== 'e',
    )
    const clear = { ...label, tokens: others, padded: ` ${others.join(' ')} ` }
    const [out, into] = [says(clear, 'outside'), says(clear, 'inside')]
    return out === into ? undefined : out ? 'outside' : 'inside'
  }
  return outside ? 'outside' : inside ? 'inside' : undefined
}

function isTemperature(label: Label, value: number | undefined): boolean {
  if (value === undefined || value < -40 || value > 120) return false
  if (says(label, 'temperature')) return true
  return (
    label.tokens.length <= 2 &&
    sideOf(label) !== undefined &&
    // "Volume inside", "room in", and "blowing in", which is a direction.
    !(['volume', 'area', 'room', 'dep', 'pres', 'fan'] as const).some((concept) => says(label, concept))
  )
}

/** "Flat B", "Plot 12": the name of one of several, and no label of a name. */
const isNameItself = (label: Label): boolean =>
  label.tokens.length === 2 && says(label, 'name') && /^(?:[a-h]|\d{1,4}[a-z]?)$/.test(label.tokens[1] ?? '')

/** How the building was prepared, in the languages of the methods' names. */
const PREPARATION = / (?:preparation|vorbereitung|gebaudevorbereitung|gebaudepraparation) /

function ofText(label: Label): FieldName | undefined {
  if (label.tokens.length > 6) return undefined
  if (/ (volumenbezug|volume basis|basis of (the )?volume|base du volume) /.test(label.padded))
    return 'volumeBasis'
  if (label.tokens.length <= 3 && says(label, 'wind')) return 'beaufort'
  if (label.tokens.length <= 3 && PREPARATION.test(label.padded)) return 'preparation'
  if (
    says(label, 'volume') ||
    says(label, 'area') ||
    says(label, 'temperature') ||
    says(label, 'zero') ||
    says(label, 'pressure')
  )
    return undefined
  if (says(label, 'client')) return 'client'
  if (says(label, 'address')) return 'address'
  if (says(label, 'method') && !says(label, 'date')) return 'method'
  if (label.padded.trim() === 'stage' || (says(label, 'stage') && label.tokens.length === 1)) return 'stage'
  if (says(label, 'notes')) return 'notes'
  if (label.tokens.length <= 3 && says(label, 'tester')) return 'tester'
  if (says(label, 'name') && !isNameItself(label) && !/^(type|typ)$/.test(label.tokens.at(-1) ?? ''))
    return 'name'
  if (says(label, 'testId')) return 'testId'
  return undefined
}
