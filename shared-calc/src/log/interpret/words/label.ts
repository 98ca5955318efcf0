import { statedUnit } from '../../cells/stated-unit.js'
import type { KnownUnit, QuantityKind } from '../../cells/units.js'
import { LIMITS } from '../../limits.js'
import { remembered } from '../../remembered.js'
import { CONCEPTS, type Concept } from './concepts.js'
import { withoutUnticked } from './ticked.js'

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
  let known = answered.get(label)
  if (!known) {
    known = {}
    answered.set(label, known)
  }
  known[concept] ??= hasWord(label, concept)
  return known[concept]
}

/** The same few labels are asked for the same things again and again. */
const answered = new WeakMap<Label, Partial<Record<Concept, boolean>>>()

function hasWord(label: Label, concept: Concept): boolean {
  const { whole, beginnings, anywhere, phrases } = MATCHERS.get(concept) as Matcher
  // "0 flow", "q = 0", "dp at 0": a bare nought beside a word of flow or pressure.
  if (concept === 'zero' && label.tokens.includes('0') && label.tokens.length <= 5)
    if (hasWord(label, 'flow') || hasWord(label, 'before') || hasWord(label, 'after')) return true
  // "Pressure with the blower covered", in whatever words; a fan sealed for the test has no pressure.
  if (concept === 'zero' && hasWord(label, 'fan') && STATES.some((one) => hasWord(label, one)))
    if (label.unit?.kind === 'pressure' || hasWord(label, 'pressure')) return true
  if (concept === 'zero' && isWithoutFlow(label)) return true
  return (
    label.tokens.some(
      (token) =>
        whole.has(token) ||
        beginnings.some((start) => token.startsWith(start)) ||
        anywhere.some((part) => token.includes(part)),
    ) || phrases.some((phrase) => label.padded.includes(phrase))
  )
}

const WITHOUT = new Set('without uden uten utan sem sin sans senza ohne zonder bez ilman'.split(' '))
const CORRECTION = /^[ck]orr/

/** "Pressure without air flow", in whatever words; "without flow correction" is none. */
function isWithoutFlow(label: Label): boolean {
  const at = label.tokens.findIndex((token) => WITHOUT.has(token))
  if (at < 0 || label.unit?.kind === 'flow') return false
  const [next = '', then = '', last = ''] = label.tokens.slice(at + 1)
  if ([next, then, last].some((token) => CORRECTION.test(token))) return false
  const isFlow = (words: string) => hasWord(readLabel(words), 'flow')
  const isPressure = label.unit?.kind === 'pressure' || hasWord(label, 'pressure')
  return isPressure && (isFlow(next) || isFlow(`${next} ${then}`))
}

/** States of a fan in which there is no flow. */
const STATES = ['covered', 'stopped'] as const

/** Reads a text as a label; the same text gives the same label. */
export const readLabel = remembered(labelOf)

const LETTERS: Record<string, string> = { ß: 'ss', ø: 'o', ł: 'l', æ: 'ae', œ: 'oe', đ: 'd', ı: 'i' }

function labelOf(text: string): Label {
  const short = text.length > LIMITS.labelCharacters ? text.slice(0, LIMITS.labelCharacters) : text
  const meant = withoutUnticked(short)
  const tokens = wordsOf(meant)
  const found = statedUnit(meant)
  return { text: short.trim(), padded: ` ${tokens.join(' ')} `, tokens, ...found }
}

/** "A_E", "T_in", "p_0": a symbol with its index is one word. */
const SUBSCRIPT = /(?<!\p{L})(a|t|v|q|[Δδ∆d]?p)_(e|f|i|a|o|m|b|l|in|out|int|ext|0[12]?)(?![\p{L}\p{N}])/giu

/** Danish "før", and its "for" or "för" at the end of a label, mean before; elsewhere "for" is the word of English and Norwegian. */
const FOER = /(?<!\p{L})før(?!\p{L})/giu
const FOR_AT_END = /(?<!\p{L})for(?=\s*(?:$|[([,:;=/]|pa(?!\p{L})))/gu

/** Turkish "önce" and Hungarian "után": without their accents they would be an English and a Swedish word. */
const ONCE = /(?<!\p{L})önce(?!\p{L})/giu
const UTAN = /(?<!\p{L})után(?!\p{L})/giu

/** German "Ü" and "ÜD" for overpressure: without their dots they would be those of the other direction. */
const UEBER = /(?<!\p{L})üd?(?!\p{L})/giu

/** "Tª interior": the word for temperature cut short. */
const TEMPERATURE = /(?<!\p{L})t\.?ª/giu

/** "N.º", "N°": its sign is no letter, and none for a degree. */
const NUMERO = /(?<!\p{L})n\.?\s?[º°](?!\p{L})/giu

/** Words of a text: lower case, without accents, signs and brackets. */
export function wordsOf(text: string): string[] {
  return text
    .replace(FOER, 'fore')
    .replace(ONCE, 'oncesi')
    .replace(UTAN, 'utana')
    .replace(UEBER, 'uber')
    .replace(NUMERO, 'nr')
    .replace(TEMPERATURE, 'temperatura')
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .replace(/([a-z]{3})([A-Z])/g, '$1 $2')
    .replace(/(?<!\p{L})([Δδ∆d]p)_?(?=[A-Z][a-z]{2})/gu, '$1 ')
    .replace(SUBSCRIPT, '$1$2')
    .toLowerCase()
    .replace(FOR_AT_END, 'fore')
    .replace(/(?<![\p{L}\p{N}])[-−–]\s?ve(?!\p{L})/gu, 'negative')
    .replace(/\+\s?ve(?!\p{L})/gu, 'positive')
    .replace(/[ßøłæœđı]/g, (letter) => LETTERS[letter] ?? letter)
    .split(/[^\p{L}\p{N}#°%]+/u)
    .filter((word) => word !== '')
}

/** What people write where there is no value. */
const PLACEHOLDERS = new Set([
  '-',
  '–',
  '—',
  '/',
  'n/a',
  'na',
  'n.a.',
  'n.b.',
  'n.d.',
  'nb',
  'nd',
  'none',
  'x',
  '?',
  'oor',
  'k.a.',
  '...',
  '…',
])
export const isPlaceholder = (text: string): boolean => PLACEHOLDERS.has(text.trim().toLowerCase())

/** The unit of a label where it is of the kind asked for. */
export function unitOf(label: Label | undefined, kind: QuantityKind): KnownUnit | undefined {
  return label?.unit?.kind === kind ? label.unit : undefined
}

/** "Mean of the positive values", "highest negative": a sign of values, and no direction; nor has "inside minus outside" one. */
const OF_VALUES =
  / (?:values?|werte?|valeurs?|waarden?|wartosci|valores|valori|mean|avg|average|max|min|maximum|minimum|mittelwert|moyenne|media|highest|lowest) /

/** The words of a sign, which are those of a direction only where no values are spoken of. */
const SIGN = / (?:plus|minus|positi(?:f|v(?:e|er|a|o|es)?)|negati(?:f|v(?:e|er|a|o|es)?)) /

/** "Neg press": its second word is short for pressure. */
const OF_PRESSURE = / (?:neg|negative|pos|positive) press(?:ure)? /

/** "Atm. press.", "house press": pressure cut short, and no pressurisation. */
const CUT_SHORT =
  / (?:atm|atmos|abs|air|amb|ambient|ext|bar|baro|barom|house|home|bldg|building|room|fan|diff|static|total|net|target|nom|site|local) press? /

/** The direction a label names, where it names one only. */
export function directionIn(label: Label | undefined): 'depressurisation' | 'pressurisation' | undefined {
  if (!label) return undefined
  const { padded } = label
  if (SIGN.test(padded) && (OF_VALUES.test(padded) || (says(label, 'inside') && says(label, 'outside'))))
    return undefined
  if (CUT_SHORT.test(padded) && !says(label, 'dep')) return undefined
  if (OF_PRESSURE.test(padded)) return padded.includes(' neg') ? 'depressurisation' : 'pressurisation'
  const dep = says(label, 'dep')
  const pres = says(label, 'pres')
  if (dep === pres) return undefined
  return dep ? 'depressurisation' : 'pressurisation'
}
