import { remembered } from '../remembered.js'
import type { QuantityKind } from './units.js'

/** What a field of the record holds, and so how a cell for it is read. */
export type FieldKind =
  | { kind: 'quantity'; quantity: QuantityKind }
  | { kind: 'number' }
  | { kind: 'whole' }
  | { kind: 'date' }
  | { kind: 'text' }
  | {
      kind: 'choice'
      words: Readonly<Record<string, string>>
      /** Other words are passed on as they are: what reads the record knows more of them. */
      open?: boolean
    }

/** Field names end in their unit, so the ending tells the quantity. */
const BY_ENDING: [RegExp, QuantityKind][] = [
  [/_Pa$/, 'pressure'],
  [/_m3_h$/, 'flow'],
  [/_kg_m3$/, 'density'],
  [/_m3$/, 'volume'],
  [/_m2$/, 'area'],
  [/_m_s$/, 'speed'],
  [/_m$/, 'length'],
  [/_C$/, 'temperature'],
  [/_s$/, 'time'],
  [/RelativeHumidity$/, 'fraction'],
]

/** Words logs use for the values of a choice, in lower case without accents: English, German, French. */
const METHODS = {
  'iso 9972': 'iso-9972:2015',
  'iso 9972:2015': 'iso-9972:2015',
  'en iso 9972': 'iso-9972:2015',
  'din en iso 9972': 'iso-9972:2015',
  'nf en iso 9972': 'iso-9972:2015',
  'bs en iso 9972': 'iso-9972:2015',
  'en 13829': 'en-13829:2001',
  'en 13829:2001': 'en-13829:2001',
  'din en 13829': 'en-13829:2001',
  'astm e779': 'astm-e779-19',
  'astm e1827 one-point': 'astm-e1827-22-one-point',
  'astm e1827 two-point': 'astm-e1827-22-two-point',
  'astm e3158': 'astm-e3158-18',
  'can/cgsb-149.10': 'can-cgsb-149.10-2019',
  'cgsb 149.10': 'can-cgsb-149.10-2019',
  'ansi/resnet/icc 380': 'ansi-resnet-icc-380',
  'resnet 380': 'ansi-resnet-icc-380',
}

const CHOICES: Record<string, Record<string, string>> = {
  direction: {
    depressurisation: 'depressurisation',
    depressurization: 'depressurisation',
    depressurise: 'depressurisation',
    negative: 'depressurisation',
    unterdruck: 'depressurisation',
    depression: 'depressurisation',
    pressurisation: 'pressurisation',
    pressurization: 'pressurisation',
    pressurise: 'pressurisation',
    positive: 'pressurisation',
    uberdruck: 'pressurisation',
    ueberdruck: 'pressurisation',
    surpression: 'pressurisation',
    pressurisierung: 'pressurisation',
  },
  volumeBasis: {
    net: 'net',
    netto: 'net',
    nettoluftvolumen: 'net',
    'volume net': 'net',
    'overall internal': 'overall internal',
    internal: 'overall internal',
    innenmasse: 'overall internal',
    'dimensions interieures': 'overall internal',
  },
  stage: {
    fabric: 'fabric',
    'after services': 'after services',
    acceptance: 'acceptance',
    abnahme: 'acceptance',
    reception: 'acceptance',
    retest: 'retest',
    wiederholung: 'retest',
    'nouvel essai': 'retest',
  },
  preparation: {
    'method 1': 'method 1',
    'method 2': 'method 2',
    'method 3': 'method 3',
    'verfahren 1': 'method 1',
    'verfahren 2': 'method 2',
    'verfahren 3': 'method 3',
    'methode 1': 'method 1',
    'methode 2': 'method 2',
    'methode 3': 'method 3',
  },
  windAt: { ground: 'ground', meteorological: 'meteorological' },
  state: {
    open: 'open',
    closed: 'closed',
    sealed: 'sealed',
    filled: 'filled',
    off: 'off',
    'not present': 'not present',
    offen: 'open',
    geschlossen: 'closed',
    abgedichtet: 'sealed',
    abgeklebt: 'sealed',
    ausgeschaltet: 'off',
    'nicht vorhanden': 'not present',
    ouvert: 'open',
    ferme: 'closed',
    obture: 'sealed',
    rempli: 'filled',
    arrete: 'off',
    absent: 'not present',
  },
}

/** How the field at a path of the record is read: `runs[0].readings[2].pressure_Pa` → a pressure. */
export const fieldKind = remembered(kindOf)

function kindOf(path: string): FieldKind {
  const last = path.slice(path.lastIndexOf('.') + 1)
  const name = last.split('[', 1)[0] || last
  const quantity = BY_ENDING.find(([ending]) => ending.test(name))?.[1]
  if (quantity) return { kind: 'quantity', quantity }
  // Of the uncertainties only temperatures and pressures have a unit; the rest are shares, but for the exponent's,
  // where a per cent sign could mean either.
  if (path.startsWith('uncertainty.'))
    return name.endsWith('_K') || name === 'assumedExponent'
      ? { kind: 'number' }
      : { kind: 'quantity', quantity: 'fraction' }
  if (name === 'date' || name === 'day' || name === 'calibrationDue') return { kind: 'date' }
  if (name === 'coefficient' || name === 'exponent' || name === 'limit' || name === 'scaleUncertainty')
    return { kind: 'number' }
  if (name === 'beaufort') return { kind: 'whole' }
  if (path === 'test.method') return { kind: 'choice', words: METHODS, open: true }
  const words = CHOICES[name]
  return words ? { kind: 'choice', words } : { kind: 'text' }
}

const ASCII = /^[ -~]*$/

/** A word as dictionaries keep it: lower case, no accents, single blanks, no stops. */
export function plainWord(text: string): string {
  // Most labels are plain ASCII, on which the first three steps change nothing.
  const bare = ASCII.test(text) ? text : text.normalize('NFKD').replace(/\p{M}/gu, '').replaceAll('ß', 'ss')
  return bare
    .toLowerCase()
    .replace(/[.:*_]+/g, ' ')
    .replace(/\s+/g, ' ')
    .trim()
}
