import { plainWord } from '../cells/fields.js'
import type { KnownUnit, QuantityKind } from '../cells/units.js'
import { readHeading } from '../layout/match.js'

/** Columns a table of readings, or a raw series, may have. */
export type ColumnRole = 'pressure' | 'flow' | 'devicePressure' | 'range' | 'direction' | 'time'

/** The trade's words for single values, by field: English, German, French; lower case, without accents. */
const FIELD_WORDS: Record<string, string> = {
  'building.name':
    'building|building name|house|project|plot|dwelling|property|unit tested|gebaude|objekt|projekt|bauvorhaben|wohneinheit|batiment|projet|ouvrage|logement|nom du batiment',
  'building.address': 'address|site address|adresse|anschrift|adresse du chantier',
  'building.site': 'site|development|baustelle|standort|chantier|lotissement',
  'building.volume_m3':
    "volume|internal volume|building volume|air volume|volume tested|volumen|innenvolumen|luftvolumen|gebaudevolumen|nettoluftvolumen|volume interieur|volume d'air|volume mesure|v",
  'building.volumeBasis': 'volume basis|volumenbezug|base du volume',
  'building.envelopeArea_m2':
    "envelope area|building envelope area|area of envelope|hullflache|huellflaeche|gebaudehullflache|surface d'enveloppe|surface de l'enveloppe|surface de parois|ae",
  'building.floorArea_m2':
    'floor area|net floor area|internal floor area|grundflache|nettogrundflache|wohnflache|bodenflache|surface de plancher|surface au sol|surface habitable|af',
  'building.height_m': 'height|building height|hohe|gebaudehohe|hauteur|hauteur du batiment',
  'building.altitude_m':
    'altitude|site altitude|elevation|height above sea level|seehohe|hohe uber nn|altitude du site',
  'test.id':
    "test no|test number|test id|test ref|test reference|report no|pruf-nr|prufnummer|messung nr|bericht nr|essai n|n° essai|numero d'essai|essai no",
  'test.date':
    "date|test date|date of test|datum|prufdatum|messdatum|date de l'essai|date d'essai|date de mesure|jour",
  'test.tester':
    'tester|tested by|technician|operator|carried out by|prufer|messtechniker|durchgefuhrt von|bearbeiter|operateur|testeur|mesureur|mesure par|essai realise par',
  'test.organisation': 'organisation|company|testing company|firma|organisme|societe|entreprise',
  'test.client': "client|customer|auftraggeber|bauherr|kunde|maitre d'ouvrage|donneur d'ordre",
  'test.method': "method|test method|standard|test standard|norm|prufnorm|norme|methode d'essai",
  'test.stage': 'stage|bauphase|phase',
  'test.preparation': 'preparation|gebaudepraparation|preparation du batiment',
  'test.notes': 'notes|remarks|comments|bemerkungen|anmerkungen|remarques|observations',
  'conditions.indoorTemperature_C':
    'indoor temperature|inside|indoors|innen|interieur|inside temperature|internal temperature|temperature inside|temperature indoors|temp inside|temp in|t in|ti|indoor temp|inside temp|internal temp|innentemperatur|temperatur innen|lufttemperatur innen|raumtemperatur|temperature interieure|temp interieure|temperature int|t int',
  'conditions.outdoorTemperature_C':
    'outdoor temperature|outside|outdoors|aussen|exterieur|outside temperature|external temperature|temperature outside|temperature outdoors|temp outside|temp out|t out|te|outdoor temp|outside temp|external temp|aussentemperatur|temperatur aussen|lufttemperatur aussen|temperature exterieure|temp exterieure|temperature ext|t ext',
  'conditions.barometricPressure_Pa':
    'barometric pressure|barometer|atmospheric pressure|air pressure|baro|luftdruck|barometerstand|pression barometrique|pression atmospherique',
  'conditions.indoorRelativeHumidity':
    'indoor humidity|indoor relative humidity|inside humidity|rh inside|luftfeuchte innen|relative feuchte innen|humidite interieure|humidite relative interieure',
  'conditions.outdoorRelativeHumidity':
    'outdoor humidity|outdoor relative humidity|outside humidity|rh outside|luftfeuchte aussen|relative feuchte aussen|humidite exterieure|humidite relative exterieure',
  'conditions.windSpeed_m_s': 'wind speed|wind|windgeschwindigkeit|vitesse du vent|vent',
  'conditions.beaufort': 'beaufort|wind force|windstarke|force du vent',
  'pressureGauge.serial':
    'gauge serial|gauge serial no|pressure gauge|gauge|manometer|druckmessgerat|manometre',
  'pressureGauge.calibrationDue':
    "gauge calibration due|gauge calibrated until|manometer kalibriert bis|etalonnage manometre valable jusqu'au",
  'flowDevice.serial':
    'fan serial|fan serial no|flow device|flow device serial|fan|geblase|geblase nr|ventilator|ventilateur|n° ventilateur',
  'flowDevice.calibrationDue':
    "fan calibration due|flow device calibration due|fan calibrated until|geblase kalibriert bis|etalonnage ventilateur valable jusqu'au",
}

const COLUMN_WORDS: Record<ColumnRole, string> = {
  pressure:
    'pressure|pressure difference|building pressure|envelope pressure|induced pressure|house pressure|dp|delta p|δp|dp building|dp envelope|p|druck|druckdifferenz|differenzdruck|gebaudedruck|gebaudedruckdifferenz|pression|difference de pression|ecart de pression|dp batiment|pression batiment',
  flow: "flow|air flow|airflow|flow rate|air flow rate|fan flow|volume flow|measured flow|q|qm|v\u0307|volumenstrom|luftvolumenstrom|leckagestrom|luftstrom|debit|debit d'air|debit de fuite|debit mesure",
  devicePressure:
    'device pressure|fan pressure|flow pressure|nozzle pressure|orifice pressure|dp fan|dp device|geblasedruck|geratedruck|messdruck geblase|druck am geblase|blendendruck|pression ventilateur|pression du ventilateur|pression dispositif|device|fan|geblase|pression diaphragme',
  range: 'range|fan range|device range|ring|plate|bereich|messbereich|blende|plage|gamme|configuration',
  direction: "direction|mode|test mode|test direction|richtung|messrichtung|sens|sens d'essai",
  time: 'time|elapsed|elapsed time|clock|zeit|uhrzeit|messzeit|temps|heure|t',
}

const ZERO =
  /\b(zero|zeroflow|baseline|bias|natural|static|null|nulldruck|nullstrom|naturlich\w*|ohne geblase|debit nul|sans ventilateur|naturelle?)\b/
const BEFORE = /\b(before|pre|pretest|start|initial|vor|vorher|anfang|beginn|avant|debut)\b/
const AFTER = /\b(after|post|posttest|end|final|nach|nachher|ende|apres|fin)\b/
const DEPRESSURISE = /\b(depress\w*|unterdruck\w*|negative?)\b/
const PRESSURISE = /\b(pressuri\w*|uberdruck\w*|ueberdruck\w*|surpress\w*|positive?)\b/

/** A guess from words: which field or column, and how well the words fit, 0 to 1. */
export interface WordGuess<T extends string = string> {
  what: T
  fit: number
  term: string
  unit?: KnownUnit
}

const terms = <T extends string>(table: Record<T, string>): [T, string][] =>
  (Object.entries(table) as [T, string][]).flatMap(([what, words]) =>
    words.split('|').map((word): [T, string] => [what, word]),
  )

const FIELD_TERMS = terms(FIELD_WORDS)
const COLUMN_TERMS = terms(COLUMN_WORDS)

/** The field a label names, by the dictionary. */
export function guessField(text: string): WordGuess | undefined {
  return guess(text, FIELD_TERMS)
}

/** The column a heading names. Zero-flow headings are none of these. */
export function guessColumn(text: string): WordGuess<ColumnRole> | undefined {
  if (guessZeroFlow(text)) return undefined
  const { unit, words } = readHeading(text)
  const kind = unit?.kind
  const fits = (what: ColumnRole) => kind === undefined || kind === KINDS[what]
  const known = guess(
    text,
    COLUMN_TERMS.filter(([what]) => fits(what)),
  )
  if (known && (known.what !== 'devicePressure' || unit || known.term.includes(' '))) return known
  // A flow "in Pa" is the pressure the device shows; a unit alone is a weak guess.
  const asFlow = guess(words, COLUMN_TERMS)
  if (asFlow?.what === 'flow' && kind === 'pressure')
    return { ...asFlow, what: 'devicePressure', unit: unit as KnownUnit }
  if (kind === 'flow' && unit) return { what: 'flow', fit: 0.45, term: 'its unit', unit }
  return undefined
}

const KINDS: Partial<Record<ColumnRole, QuantityKind>> = {
  pressure: 'pressure',
  flow: 'flow',
  devicePressure: 'pressure',
  time: 'time',
}

/** Whether a heading means the zero-flow values before or after the readings. */
export function guessZeroFlow(text: string): 'zeroFlowBefore' | 'zeroFlowAfter' | undefined {
  const words = plainWord(text).replace(/[-/]/g, ' ')
  if (!ZERO.test(words)) return undefined
  if (BEFORE.test(words)) return 'zeroFlowBefore'
  return AFTER.test(words) ? 'zeroFlowAfter' : undefined
}

/** The direction a title names. */
export function guessDirection(text: string): 'depressurisation' | 'pressurisation' | undefined {
  const words = plainWord(text)
  // French "dépression" is the direction; English "depression" is no term of the trade.
  if (DEPRESSURISE.test(words) || /\bdepression\b/.test(words)) return 'depressurisation'
  return PRESSURISE.test(words) ? 'pressurisation' : undefined
}

function guess<T extends string>(text: string, known: readonly [T, string][]): WordGuess<T> | undefined {
  const heading = readHeading(text)
  let best: WordGuess<T> | undefined
  if (!heading.words) return undefined
  for (const [what, term] of known) {
    const fit =
      heading.words === term ? 0.95 : contains(heading.words, term) ? coverage(term, heading.words) : 0
    if (fit > (best?.fit ?? 0)) best = { what, fit, term, ...(heading.unit ? { unit: heading.unit } : {}) }
  }
  return best
}

/** A term that is under half of a label is not what the label is about. */
function coverage(term: string, words: string): number {
  const share = term.length / words.length
  return share < 0.5 ? 0 : 0.4 + 0.4 * share
}

/** Whole words only, and no single letters: "t" is in every second word. */
function contains(words: string, term: string): boolean {
  if (term.length < 4) return false
  const at = words.indexOf(term)
  const edge = (index: number) =>
    index < 0 || index >= words.length || /[^\p{L}\p{N}]/u.test(words[index] as string)
  return at >= 0 && edge(at - 1) && edge(at + term.length)
}
