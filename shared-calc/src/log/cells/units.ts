import { remembered } from '../remembered.js'
import { unitFactors } from './unit-factors.generated.js'

/** Physical quantity of a field, with the one unit records use for it. */
export const RECORD_UNITS = {
  pressure: 'Pa',
  flow: 'm^3/h',
  temperature: 'degC',
  volume: 'm^3',
  area: 'm^2',
  length: 'm',
  speed: 'm/s',
  time: 's',
  density: 'kg/m^3',
  fraction: 'fraction',
} as const
export type QuantityKind = keyof typeof RECORD_UNITS

/** Unit as mathjs names it → its spellings in logs: lower case, superscripts as digits, no blanks and dots. */
const SPELLINGS: Record<QuantityKind, Record<string, string>> = {
  pressure: {
    Pa: 'pa pascal pascals',
    daPa: 'dapa dekapascal decapascal',
    hPa: 'hpa hectopascal',
    kPa: 'kpa kilopascal',
    mbar: 'mbar mb millibar millibars',
    bar: 'bar',
    inH2O: 'inh2o inwc inwg iwc iwg "wc "wg "h2o',
    mmH2O:
      'mmh2o mmwc mmwg mmws mmce mmca mmvs mmvp mmwk mmsw mmsłw mmvsl mmwassersäule mmvattenpelare mmvannsøyle mmvandsøjle mmwaterkolom',
    mmHgConventional: 'mmhg torr',
    inHgConventional: 'inhg inchhg inchesofmercury "hg',
    psi: 'psi',
  },
  flow: {
    'm^3/h':
      'm3/h m3h m3/hr m3/hour cbm/h m^3/h m3*h-1 m3h-1 cmh m3/u m3/uur m3/std m3/godz m3/t m3/tim m3/time m3/ora m3/hod m3/heure m3/hora m3/stunde nm3/h sm3/h mc/h m3perhour cubicmetresperhour cubicmetersperhour cubicmetreperhour cubicmeterperhour metrescubesparheure kubikmeterprostunde kubiekemeterperuur metroscubicosporhora',
    'm^3/s': 'm3/s m^3/s m3s-1 m3/sec m3/sek cubicmetrespersecond cubicmeterspersecond',
    'm^3/minute': 'm3/min m^3/min cmm m3/mn',
    'L/s':
      'l/s ltr/s lt/s l/sec l/sek ls-1 lps dm3/s litres/s liter/s litres/sec liters/s litrespersecond literspersecond literprosekunde litersprosekunde literpersekund literperseconde litresparseconde litrosporsegundo litrialsecondo',
    'L/minute': 'l/min lpm l/mn litres/min',
    'L/h': 'l/h',
    'cuft/minute': 'cfm scfm ft3/min cf/m cf/min cuft/min ft^3/min cubicfeetperminute cubicfeet/min',
  },
  temperature: {
    degC: 'c °c degc celsius gradc',
    degF: 'f °f degf fahrenheit',
    K: 'k kelvin',
  },
  volume: {
    'm^3': 'm3 m^3 cbm mc cubicmetres cubicmeters kubikmeter',
    cuft: 'ft3 ft^3 cuft cf cubicfeet',
    L: 'l ltr litre litres liter',
  },
  area: { 'm^2': 'm2 m^2 qm mq sqm squaremetres squaremeters', sqft: 'ft2 ft^2 sqft sf squarefeet' },
  length: {
    // "640 m ü. M.", "m a.s.l.", "m s.l.m.", "m n. p. m.": metres above the sea.
    m: 'm metre metres meter müm muem münn münhn mnn mnhn masl mamsl mslm mnpm mnm mnmm msnm moh möh mosl',
    cm: 'cm',
    mm: 'mm',
    ft: "ft foot feet '",
    inch: 'in inch',
  },
  speed: {
    'm/s': 'm/s ms-1',
    'km/h': 'km/h kmh kph',
    'mi/h': 'mph mi/h',
    knot: 'kn kt kts knot knots',
    'ft/minute': 'fpm ft/min',
  },
  time: {
    s: 's sec secs second seconds sek',
    minute: 'min mins minute minutes mn',
    h: 'h hr hour hours std',
  },
  density: { 'kg/m^3': 'kg/m3 kg/m^3', 'lbm/cuft': 'lb/ft3 lbm/ft3' },
  fraction: { percent: '% percent pct prozent pourcent', fraction: '1 -' },
}

/** A unit as a log spells it, understood. */
export interface KnownUnit {
  kind: QuantityKind
  /** As mathjs names it. */
  unit: string
  /** The spelling means a flow at some standard state: "Nm³/h", "scfm". */
  standardState?: true
  /** The spelling says that a length is a height above the sea: "m ü. M.". */
  aboveSea?: true
}

const STANDARD_STATE = /^(?:[ns]m3|scfm)/

const ABOVE_SEA = /^m(?:[uü]e?m|ünh?n|nh?n|am?sl|slm|npm|nmm?|snm|oh|öh|osl)$/

const BY_SPELLING = new Map<string, KnownUnit>(
  Object.entries(SPELLINGS).flatMap(([kind, units]) =>
    Object.entries(units).flatMap(([name, spellings]) =>
      spellings.split(' ').map((spelling): [string, KnownUnit] => [
        spelling,
        {
          kind: kind as QuantityKind,
          unit: name,
          ...(STANDARD_STATE.test(spelling) ? { standardState: true as const } : {}),
          ...(kind === 'length' && ABOVE_SEA.test(spelling) ? { aboveSea: true as const } : {}),
        },
      ]),
    ),
  ),
)

/** The unit a spelling stands for: "m³/h", "in. w.c.", "°F"; "% rF" is not a unit. Undefined for an unknown one. */
export function findUnit(spelling: string): KnownUnit | undefined {
  return looked(spelling).unit
}

const looked = remembered((spelling): { unit?: KnownUnit } => {
  const key = spelling
    .replace(/10([¹²³])/, (_, power: string) => `10^${'¹²³'.indexOf(power) + 1}`)
    // The sign of masculine numbers, which would become a letter.
    .replace('º', '°')
    .normalize('NFKC')
    .toLowerCase()
    .replace(/[\s.·⋅]/g, '')
    .replace(/[″“”]/g, '"')
    .replace('−', '-')
  const unit = BY_SPELLING.get(key) ?? multipleIn(key)
  return unit ? { unit } : {}
})

/** "1000 m³/h", "×100 l/s", "10³ m³/h", "Tsd. m³/h", "m³/h × 1000": flows of large buildings in tens to thousands. */
const MULTIPLE = /^[x×*]?(10\^[123]|10{1,3}|1,000|thousand|tausend|tsd|hundred|k)[x×*]?(\D.*)$/
const MULTIPLE_BEHIND = /^(\D.*?)[x×*](10\^[123]|10{1,3})$/
const TIMES: Record<string, number> = { thousand: 1000, tausend: 1000, tsd: 1000, k: 1000, hundred: 100 }

function multipleIn(key: string): KnownUnit | undefined {
  if (key.length > 24) return undefined
  const [, front, behind] = MULTIPLE.exec(key) ?? []
  const [, before, back] = MULTIPLE_BEHIND.exec(key) ?? []
  const [count, of] = front === undefined ? [back, before] : [front, behind]
  const unit = of === undefined ? undefined : BY_SPELLING.get(of)
  if (count === undefined || unit?.kind !== 'flow' || (count === 'k' && unit.unit !== 'cuft/minute'))
    return undefined
  return { ...unit, unit: `${TIMES[count] ?? timesOf(count)} ${unit.unit}` }
}

/** The name of such a unit: "1000 m^3/h". */
const MULTIPLIED = /^(\d+) (.+)$/

/** 1000 of "1000", "1,000" and "10^3". */
const timesOf = (count: string): number =>
  count.includes('^') ? 10 ** Number(count.at(-1)) : Number(count.replace(',', ''))

/**
 * A value of one unit in the unit records use for its quantity. Both units measure the same quantity.
 * Factors are those of mathjs, taken when the project is built; temperatures have a zero of their own.
 */
export function toRecordUnit(value: number, from: KnownUnit): number {
  const target = RECORD_UNITS[from.kind]
  if (from.unit === target) return value
  const [, times, base] = MULTIPLIED.exec(from.unit) ?? []
  if (base !== undefined) return toRecordUnit(value * Number(times), { ...from, unit: base })
  const known = unitFactors[from.unit]
  if (!known) throw new RangeError(`${from.unit} is not in unit-factors.generated.ts: run npm run formulas`)
  const { factor, whole, zero = 0 } = known
  // 47 % is 47/100: dividing by a whole number is exact where multiplying by its inverse is not.
  return whole ? (value - zero) / whole : (value - zero) * factor
}

/** Every unit that logs may use, once. */
export const knownUnits = (): KnownUnit[] =>
  Object.entries(SPELLINGS).flatMap(([kind, units]) =>
    Object.keys(units).map((unit) => ({ kind: kind as QuantityKind, unit })),
  )

/** "1 inH2O = 249.0889 Pa", for the finding that names a conversion. */
export function conversionText(from: KnownUnit): string {
  const target = RECORD_UNITS[from.kind]
  if (from.kind === 'temperature')
    return from.unit === 'degF' ? '°C = (°F − 32)/1.8' : `${shown(from.unit)} to ${shown(target)}`
  const one = String(Number(toRecordUnit(1, from).toPrecision(8)))
  return `1 ${shown(from.unit)} = ${target === 'fraction' ? one : `${one} ${shown(target)}`}`
}

const PRINTED: Record<string, string> = {
  degC: '°C',
  degF: '°F',
  'cuft/minute': 'cfm',
  inHgConventional: 'inHg',
  mmHgConventional: 'mmHg',
  percent: '%',
  fraction: '(fraction)',
  cuft: 'ft³',
  sqft: 'ft²',
  'mi/h': 'mph',
  'ft/minute': 'ft/min',
  'L/s': 'l/s',
  'L/minute': 'l/min',
  'L/h': 'l/h',
  minute: 'min',
  inch: 'in',
}

/** A unit as people print it. */
export function shown(name: string): string {
  const [, times, base] = MULTIPLIED.exec(name) ?? []
  if (base !== undefined) return `${times} ${shown(base)}`
  return PRINTED[name] ?? name.replace('^3', '³').replace('^2', '²').replace('minute', 'min')
}

/** A number format's scale and unit: `0.0" Pa"` shows 50 as "50.0 Pa"; `0%` shows 0.45 as 45 %. */
interface FormatUnit {
  unit?: KnownUnit
  /** The format shows a fraction in per cent: what is stored is the fraction. */
  percent: boolean
}

/** What the number format says about the value's unit; the person who typed it saw this unit. */
export function formatUnit(format: string | undefined): FormatUnit {
  if (!format) return { percent: false }
  const first = format.split(';')[0] ?? ''
  const literals = [...first.matchAll(/"([^"]*)"|\\(.)/g)]
    .map(([, quoted, escaped]) => quoted ?? escaped ?? '')
    .join('')
  const percent = /%/.test(first.replace(/"[^"]*"|\\./g, ''))
  const unit = literals.trim() ? findUnit(literals) : undefined
  return unit ? { unit, percent } : { percent }
}
