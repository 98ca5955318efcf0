import { bareUnit } from '../../cells/stated-unit.js'
import type { KnownUnit } from '../../cells/units.js'
import type { Written } from '../../cells/written.js'
import { isBarometer } from '../fields/classify.js'
import type { View } from '../grid/view.js'
import { directionIn, type Label, readLabel, says } from '../words/label.js'
import type { Column, Head } from './heads.js'

/** What a column may hold, by its heading and what stands in it. */
export type Role =
  | 'pressure'
  | 'induced'
  | 'device'
  | 'flow'
  | 'corrected'
  | 'target'
  | 'zeroBefore'
  | 'zeroAfter'
  | 'range'
  | 'direction'
  | 'test'
  | 'remark'
  | 'index'
  | 'time'
  | 'derived'
  | 'speed'
  | 'other'

export interface KnownColumn extends Column {
  readonly role: Role
  /** How many numbers and texts stand in the first rows. */
  readonly numbers: number
  readonly texts: number
  /** Only the curve through it says what it holds. */
  readonly byCurve?: true
}

/** The columns of one block of readings: two blocks may stand side by side below one row of headings. */
export interface Segment {
  readonly view: View
  readonly head: Head
  readonly columns: readonly KnownColumn[]
  readonly left: number
  readonly right: number
}

/** Two columns that could both be the one wanted, with nothing to tell them apart. */
export interface Doubt {
  readonly about: 'pressure' | 'flow'
  readonly columns: readonly KnownColumn[]
  /** Flow at 50 Pa with each of them, unit as logged. */
  readonly at50?: readonly (number | undefined)[]
  /** The numbers stand below each other's headings: only so they follow a leakage curve. */
  readonly exchanged?: true
  /** Two flows that are one and the same if the units of their headings are exchanged. */
  readonly unitsExchanged?: true
}

const LOOK = 30
/** As many numbers from the top on make a column of numbers. */
const FEWEST = 3
const DERIVED = [
  'ln',
  'log',
  'lg',
  'fit',
  'fitted',
  'residual',
  'residuals',
  'deviation',
  'dev',
  'error',
  'err',
  'calc',
  'predicted',
  'ausgleich',
  'regression',
  'regressie',
  'regresja',
  'ajuste',
  'ajustee',
  'n50',
  'ach',
  'ach50',
]

/** Differences from the curve, unless the heading speaks of pressures. */
const DIFFERENCE = ['diff', 'difference', 'abweichung', 'ecart', 'afwijking', 'avvik', 'afvigelse']

/** The role a column's heading names. Physics and the other columns decide later among those of one kind. */
export function roleOf(view: View, first: number, last: number, column: Column): KnownColumn {
  let numbers = 0
  let texts = 0
  let directions = 0
  let moments = 0
  let leading = 0
  let lowest: number | undefined
  const stated = new Set<KnownUnit | undefined>()
  for (let row = first; row <= Math.min(last, first + LOOK); row++) {
    const content = view.at(row, column.at)
    if (content?.kind === 'number') {
      numbers++
      if (texts === 0) leading++
      lowest = Math.min(lowest ?? content.written.value, content.written.value)
      if (texts === 0) stated.add(content.written.unit)
    }
    if (content?.kind === 'time' || content?.kind === 'date') moments++
    if (content?.kind !== 'text') continue
    texts++
    if (directionWord(content.text, column.label)) directions++
  }
  // Remarks below its numbers make no column of words.
  const textual = texts > numbers && leading < FEWEST
  const unit = column.unit ?? (textual ? undefined : unitOfRows(view, first, column))
  // "−65.4 Pa" over "137.3 l/s" in every cell: what its numbers say goes before the words of a heading.
  const units = new Map([...stated].map((one) => [one?.unit, one]))
  const said = unit ?? (units.size === 1 && leading >= FEWEST ? [...units.values()][0] : undefined)
  // "p_hPa" beside 1008, 1010, 1009: no building is under that pressure.
  const ofAir = isBarometer(lowest, unit)
  const role =
    // Below times of day the name of a direction begins another block.
    textual && moments === 0 && directions > 0 && directions >= texts / 2
      ? 'direction'
      : ofAir
        ? 'other'
        : byWords({ ...column, ...(said ? { unit: said } : {}) }, textual, texts + numbers)
  return { ...column, ...(unit ? { unit } : {}), role, numbers, texts }
}

/** "55.1 | Pa | 412 | m³/h": the unit behind the number in every row, of the kind its heading speaks of. */
function unitOfRows(view: View, first: number, { at, label }: Column): KnownUnit | undefined {
  const units = [first, first + 1].map((row) => bareUnit(view.text(row, at + 1) ?? ''))
  const [unit, next] = units
  if (!unit || unit.unit !== next?.unit) return undefined
  const fits =
    unit.kind === 'pressure' ? says(label, 'pressure') : unit.kind === 'flow' && says(label, 'flow')
  const bare = label.text === '' && bareUnit(view.text(first, at - 1) ?? '') === undefined
  return fits || bare ? unit : undefined
}

/** "l/s per m²", "m³/(h·m²)": a result for each square metre, and no flow. */
export const PER_AREA =
  /(?:\/|\bper\b|\bpr\.?|\bpro\b|\bje\b|\bpar\b|[·*. ]|\bh)\s?m(?:²|2|\^2)(?![\p{L}\d])/iu

/** "Flow/vol (1/h)", "n (h⁻¹)": changes of air, and no flow. */
export const PER_HOUR = /(?:^|[\s([/])(?:1\s?\/\s?h|h\s?(?:⁻¹|\^?[-−]1))(?![\p{L}\d])/u

/** "u (Pa)", "± (m³/h)", "s (Pa)": a spread, and no reading. */
const SPREAD = /^(?:[usσ]\s?\(|±|\+\/?-)/i

/** "C (m³/(h·Paⁿ))", "V50 (m³/h)": what the readings gave. */
const RESULT = /Pa\s?(?:\^\s?n|ⁿ)|^\s*(?:q|v|n|w|ach|cfm)_?50\s*(?:[([,:=]|in\s|$)/i

const PRESSURE = new Set(['pressure', 'pression', 'presion', 'presión', 'pressione'])

/** Headings under which "out" and "in" say which way the fan blows; elsewhere they may say which readings count. */
const OF_THE_FAN = /^(fan|blow|air|direction|dir|geblase|ventilat|richtung|sens|riktning|retning)/

/** The direction that a word of a column means: "DEP", "Pressurisation", "+", "extract", "in" below "Fan blowing". */
export function directionWord(
  text: string,
  heading?: Column['label'],
): 'depressurisation' | 'pressurisation' | undefined {
  const plain = text.trim().toLowerCase()
  if (heading?.tokens.some((token) => OF_THE_FAN.test(token))) {
    if (plain === 'out') return 'depressurisation'
    if (plain === 'in') return 'pressurisation'
  }
  if (['-', '−', '–', 'd', 'u', 'ud', 'neg', 'us', 'depr.', 'dep.', 'under', '(-)', '-ve'].includes(plain))
    return 'depressurisation'
  if (['+', 'p', 'ü', 'üd', 'o', 'pos', 'pre', 'pre.', 'pres.', 'over', '(+)', '+ve'].includes(plain))
    return 'pressurisation'
  // "Negative pressure" is no pressurisation.
  const words = plain.split(/[^\p{L}]+/u).filter((word) => !PRESSURE.has(word))
  const dep = words.some((word) =>
    /^(dep(?!ois)|despres|under|unter|podci|onder|neg|extract|exhaust|suck|saug|absaug|aspir|afzuig)/.test(
      word.normalize('NFKD').replace(/\p{M}/gu, ''),
    ),
  )
  const pres = words.some((word) =>
    /^(pres|over|uber|ueber|nadci|surp|sovra|sobre|pos(?!t)|supply|souffl|insuffl|druckend|einblas|inblaz|immiss)/.test(
      word.normalize('NFKD').replace(/\p{M}/gu, ''),
    ),
  )
  if (dep === pres) return dep ? undefined : directionIn(readLabel(plain))
  return dep ? 'depressurisation' : 'pressurisation'
}

function byWords({ label, unit }: Column, textual: boolean, filled: number): Role {
  const kind = unit?.kind
  if (filled === 0) return 'other'
  if (PER_HOUR.test(label.text)) return 'derived'
  if (PER_AREA.test(label.text) || SPREAD.test(label.text) || RESULT.test(label.text)) return 'derived'
  if (
    label.tokens.some(
      (token) => DERIVED.includes(token) || (!says(label, 'pressure') && DIFFERENCE.includes(token)),
    )
  )
    return 'derived'
  if (textual) {
    if (says(label, 'range')) return 'range'
    if (says(label, 'role') || says(label, 'notes')) return 'remark'
    if (says(label, 'test') || says(label, 'testId') || says(label, 'name')) return 'test'
    return says(label, 'direction') ? 'direction' : 'other'
  }
  if (says(label, 'zero') && says(label, 'corrected') && kind !== 'flow') return 'induced'
  if (says(label, 'zero') && says(label, 'before') && !says(label, 'after')) return 'zeroBefore'
  if (says(label, 'zero') && says(label, 'after') && !says(label, 'before')) return 'zeroAfter'
  if (kind === 'time' || (kind === undefined && says(label, 'time'))) return 'time'
  if (kind === 'fraction' || (kind === undefined && says(label, 'speed'))) return 'speed'
  if (kind === 'pressure') {
    if (says(label, 'target')) return 'target'
    if (says(label, 'barometer')) return 'other'
    if (isOfDevice(label)) return 'device'
    return isInduced(label) ? 'induced' : 'pressure'
  }
  if (kind === 'flow') return isCorrected(label) ? 'corrected' : says(label, 'target') ? 'target' : 'flow'
  if (kind !== undefined) return 'other'
  if (says(label, 'target')) return 'target'
  if (says(label, 'range') && !says(label, 'flow') && !says(label, 'pressure')) return 'range'
  if (says(label, 'notes')) return 'remark'
  const flow = says(label, 'flow')
  const pressure = says(withoutTitle(label), 'pressure')
  if (flow && !pressure) return isCorrected(label) ? 'corrected' : 'flow'
  if (pressure && !says(label, 'barometer'))
    return isOfDevice(label) ? 'device' : isInduced(label) ? 'induced' : 'pressure'
  if (isOfHouse(label)) return 'other'
  if (says(label, 'induced')) return 'induced'
  if (says(label, 'device')) return 'device'
  if (says(label, 'building') && !says(label, 'volume')) return 'pressure'
  if (says(label, 'index')) return 'index'
  return says(label, 'test') || says(label, 'testId') ? 'test' : 'other'
}

/** "Überdruck Volumenstrom", "Onderdruk Debiet": the pressure in the name of a run is not what the column holds. */
function withoutTitle(label: Label): Label {
  const kept = label.tokens.filter((token) => !OF_TITLE.test(token))
  return kept.length === label.tokens.length || kept.length === 0 ? label : readLabel(kept.join(' '))
}
const OF_TITLE = /^(?:unter|uber|ueber|onder|over|under)(?:druck|druk|tryk|tryck)/

/** "Net floor area", "Indoor temp.": a line of the form in a table across. */
const isOfHouse = (label: Label): boolean =>
  says(label, 'area') ||
  says(label, 'temperature') ||
  says(label, 'humidity') ||
  (says(label, 'volume') && label.tokens.length > 1)

const isOfDevice = (label: Label): boolean =>
  (says(label, 'device') || says(label, 'flow')) && !says(label, 'zero') && !saysBuildingOnly(label)

const saysBuildingOnly = (label: Label): boolean =>
  says(label, 'building') && !says(label, 'device') && !says(label, 'flow')

/** "Net", "corrected", or "Δp − Δp₀": the zero-flow pressure is subtracted. */
const isInduced = (label: Label): boolean =>
  says(label, 'induced') ||
  /\p{L}\s*[-−–]\s*(?:[Δδd∆]?p_?|p)(?:0|z|zf|bl|nat)/iu.test(label.text.normalize('NFKC'))
const isCorrected = (label: Label): boolean => says(label, 'corrected')

/** Numbers of a column over some rows, where each holds one. */
export const numbersOf = (view: View, column: number, rows: readonly number[]): (number | undefined)[] =>
  rows.map((row) => view.number(row, column))

export function writtenAt(view: View, row: number, column: number): Written | undefined {
  const content = view.at(row, column)
  return content?.kind === 'number' ? content.written : undefined
}
