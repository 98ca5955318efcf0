import { findUnit, type KnownUnit, type QuantityKind } from '../../cells/units.js'
import { LIMITS } from '../../limits.js'
import { remembered } from '../../remembered.js'
import { CONCEPTS, type Concept } from './concepts.js'

/** A text of the sheet parted into words, with the unit it states. */
export interface Label {
  readonly text: string
  /** Words between single blanks, with a blank at both ends. */
  readonly padded: string
  readonly tokens: readonly string[]
  readonly unit?: KnownUnit
  /** The unit is a bare last word of one or two letters: it may be a word after all. */
  readonly loose?: boolean
}

interface Matcher {
  whole: ReadonlySet<string>
  beginnings: readonly string[]
  anywhere: readonly string[]
  phrases: readonly string[]
}

const MATCHERS = new Map<Concept, Matcher>(
  (Object.entries(CONCEPTS) as [Concept, string][]).map(([concept, list]) => {
    const [single = '', ...phrases] = list.split('|')
    const words = single.trim().split(/\s+/)
    return [
      concept,
      {
        whole: new Set(words.filter((word) => !word.endsWith('*') && !word.startsWith('~'))),
        beginnings: words.filter((word) => word.endsWith('*')).map((word) => word.slice(0, -1)),
        anywhere: words.filter((word) => word.startsWith('~')).map((word) => word.slice(1)),
        phrases: phrases.map((phrase) => ` ${phrase.trim()} `),
      },
    ]
  }),
)

/** Whether a label has a word for a thing. */
export function says(label: Label | undefined, concept: Concept): boolean {
  if (!label) return false
  const known = answered.get(label) ?? {}
  known[concept] ??= hasWord(label, concept)
  answered.set(label, known)
  return known[concept]
}

/** The same few labels are asked for the same things again and again. */
const answered = new WeakMap<Label, Partial<Record<Concept, boolean>>>()

function hasWord(label: Label, concept: Concept): boolean {
  const { whole, beginnings, anywhere, phrases } = MATCHERS.get(concept) as Matcher
  // "0 flow", "q = 0", "dp at 0": a bare nought beside a word of flow or pressure.
  if (concept === 'zero' && label.tokens.includes('0') && label.tokens.length <= 5)
    if (hasWord(label, 'flow') || hasWord(label, 'before') || hasWord(label, 'after')) return true
  return (
    label.tokens.some(
      (token) =>
        whole.has(token) ||
        beginnings.some((start) => token.startsWith(start)) ||
        anywhere.some((part) => token.includes(part)),
    ) || phrases.some((phrase) => label.padded.includes(phrase))
  )
}

/** Reads a text as a label; the same text gives the same label. */
export const readLabel = remembered(labelOf)

const LETTERS: Record<string, string> = { ß: 'ss', ø: 'o', ł: 'l', æ: 'ae', œ: 'oe', đ: 'd' }

function labelOf(text: string): Label {
  const short = text.length > LIMITS.labelCharacters ? text.slice(0, LIMITS.labelCharacters) : text
  const tokens = wordsOf(short)
  const found = unitIn(short)
  return { text: short.trim(), padded: ` ${tokens.join(' ')} `, tokens, ...found }
}

/** Words of a text: lower case, without accents, signs and brackets. */
export function wordsOf(text: string): string[] {
  return text
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .replace(/([a-z]{3})([A-Z])/g, '$1 $2')
    .replace(/(?<!\p{L})([Δδ∆d]p)_?(?=[A-Z][a-z]{2})/gu, '$1 ')
    .toLowerCase()
    .replace(/[ßøłæœđ]/g, (letter) => LETTERS[letter] ?? letter)
    .split(/[^\p{L}\p{N}#°%]+/u)
    .filter((word) => word !== '')
}

type FoundUnit = { unit?: KnownUnit; loose?: boolean }

/** The unit a text states: in brackets, after a comma, slash or underscore, or as its last words. */
function unitIn(text: string): FoundUnit {
  const whole = findUnit(text)
  if (whole) return { unit: whole }
  for (const inside of bracketed(text)) {
    const unit = unitOfPiece(inside)
    if (unit) return { unit }
  }
  const bare = withoutBrackets(text).replace(/:\s*$/, '').trim()
  const underscored = bare.split('_')
  if (underscored.length > 2) {
    const unit = findUnit(underscored.slice(-2).join('/'))
    if (unit) return { unit }
  }
  for (const sign of [',', '_', ';', ':']) {
    const at = bare.lastIndexOf(sign)
    const unit = at > 0 ? findUnit(bare.slice(at + 1)) : undefined
    if (unit) return { unit }
  }
  const slash = bare.indexOf('/')
  const behind = slash > 0 ? findUnit(bare.slice(slash + 1)) : undefined
  if (behind && behind.kind !== 'time') return { unit: behind }
  const words = bare.split(/\s+/)
  for (let count = 3; count >= 1; count--) {
    if (words.length <= count) continue
    const last = words.slice(-count).join(' ')
    const unit = last.toLowerCase() === 'in' ? undefined : findUnit(last)
    if (unit) return { unit, ...(last.length < 2 || LOOSE.has(last.toLowerCase()) ? { loose: true } : {}) }
  }
  const first = words.length > 1 ? findUnit(words[0] as string) : undefined
  if (first && (words[0] as string).length > 1) return { unit: first, loose: true }
  // "m³/h at 20 °C", "all flows in l/s and pressures in Pa": the first unit of several letters.
  for (const word of words) {
    const unit = word.length >= 3 && /[/³3]/.test(word) ? findUnit(word.replace(/[.;]$/, '')) : undefined
    if (unit) return { unit, loose: true }
  }
  return {}
}

const LOOSE = new Set(['min', 'in', 'pa', 'kn', 'kt', 'sec', 'hr', 'sf', 'cf', 'bar', 'pct'])

function unitOfPiece(piece: string): KnownUnit | undefined {
  const whole = findUnit(piece.replace(/^\s*(in|en)\s+(?=\S{2})/i, ''))
  if (whole) return whole
  for (const part of piece.split(/[,;@]|\s(?:at|bei|a|ved|vid|by|of)\s/)) {
    const unit = findUnit(part) ?? findUnit(part.trim().split(/\s+/)[0] ?? '')
    if (unit) return unit
  }
  return undefined
}

/** What people write where there is no value. */
const PLACEHOLDERS = new Set(['-', '–', '—', '/', 'n/a', 'na', 'none', 'x', '?', 'oor', 'k.a.', '...', '…'])
export const isPlaceholder = (text: string): boolean => PLACEHOLDERS.has(text.trim().toLowerCase())

/** A text that is a unit and nothing else, with or without brackets. */
export function bareUnit(text: string): KnownUnit | undefined {
  const trimmed = text.trim()
  const unit = findUnit(trimmed) ?? findUnit(bracketed(trimmed)[0] ?? '')
  return unit && (findUnit(trimmed) || /^[([{]/.test(trimmed)) && unit.unit !== 'fraction' ? unit : undefined
}

/** What stands in brackets of any kind, without looking back. */
export function bracketed(text: string): string[] {
  const found: string[] = []
  let start = -1
  for (let at = 0; at < text.length; at++) {
    const letter = text[at] as string
    if ('([{'.includes(letter)) start = at + 1
    else if (')]}'.includes(letter) && start >= 0) {
      found.push(text.slice(start, at))
      start = -1
    }
  }
  return found
}

function withoutBrackets(text: string): string {
  let bare = ''
  let depth = 0
  for (const letter of text) {
    if ('([{'.includes(letter)) depth++
    else if (')]}'.includes(letter)) depth = Math.max(0, depth - 1)
    else if (depth === 0) bare += letter
  }
  return bare
}

/** The unit of a label where it is of the kind asked for. */
export function unitOf(label: Label | undefined, kind: QuantityKind): KnownUnit | undefined {
  return label?.unit?.kind === kind ? label.unit : undefined
}

/** The direction a label names, where it names one only. */
export function directionIn(label: Label | undefined): 'depressurisation' | 'pressurisation' | undefined {
  const dep = says(label, 'dep')
  const pres = says(label, 'pres')
  if (dep === pres) return undefined
  return dep ? 'depressurisation' : 'pressurisation'
}
