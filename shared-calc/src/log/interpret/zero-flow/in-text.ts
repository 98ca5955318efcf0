import type { Direction } from '../../../contract/record/index.js'
import { figureOf } from '../../cells/number-text.js'
import { bareUnit } from '../../cells/stated-unit.js'
import type { Written } from '../../cells/written.js'
import { directionIn, type Label, readLabel, says } from '../words/label.js'
import { statisticIn } from './headings.js'

/** A zero-flow value written into a text, with the word that says when it was taken. */
export interface ZeroInText extends Written {
  readonly which?: 'before' | 'after'
}

/** "09:45 fan covered": when it was noted, and no value. */
const TIME_OF_DAY = /^\s*\d{1,2}[:.]\d{2}(?::\d{2})?(?:\s*(?:h|am|pm|uhr))?\s+(?=\p{L})/iu

/**
 * Zero-flow values of one cell: "Zero flow: −1.2 Pa", "0.7 Pa before, 1.0 Pa after", "zeros 0.4 and 0.2".
 * Undefined where the text says more than values, units, before and after.
 */
export function zeroValuesIn(whole: string): ZeroInText[] | undefined {
  const text = whole.replace(TIME_OF_DAY, '')
  if (text.length > 90 || namesBoth(text)) return undefined
  const mean = meanAtEnd(text)
  if (mean) return [mean]
  // "Baseline before: −1.4 Pa   Baseline after: −1.0 Pa": each with a label of its own.
  const each = text.split(/\s{2,}|\t/)
  if (each.length === 2 && each.every((one) => /[:=]/.test(one) && whenIn(one))) {
    const values = each.map(zeroValuesIn)
    const [first, second] = values
    if (first?.length === 1 && second?.length === 1)
      return [first, second]
        .flat()
        .map((one, index) => ({ ...one, which: whenIn(each[index] as string) as 'before' | 'after' }))
  }
  const prefix = /^[^:=]*[:=]/.exec(text)?.[0] ?? ''
  // "Δp0 = −1.2 Pa (30 s)": what stands in brackets behind the value is a remark.
  const own = text.slice(prefix.length).replace(/(?<!\()\([^()]*\)\s*$/, '')
  // In "−1.2,−0.8" the comma parts two figures, in "−1,2" it is the decimal sign.
  const marked = own.replace(/\s+/g, ' ').replace(/\d\.\d/.test(own) ? /,/g : /(?<!\d),|,(?!\d)/g, ';')
  const pieces = marked.split(/[;|/→]| (?:and|und|et|en|e|y|i|og|och|ja|&|\/|→|to|then) /i)
  if (pieces.length > 8) return undefined
  const found: ZeroInText[] = []
  for (const piece of pieces) {
    const value = pieceOf(piece)
    if (!value) return undefined
    found.push(value)
  }
  const label = withoutFigures(text)
  const front = whenIn(prefix)
  // "Zero flow before: −1.9, −1.6, −1.5": samples.
  if (front && found.length > 2 && !found.some(({ which }) => which))
    return found.map((one) => ({ ...one, which: front }))
  if (found.length > 1 && found[0] && front && !found[0].which) found[0] = { ...found[0], which: front }
  const [first, second] = found
  if (!first) return undefined
  if (found.length === 1) return first.which || /[:=]/.test(text) ? found : undefined
  if (found.every(({ which }) => which)) return found
  if (second && found.length === 2 && !found.some(({ which }) => which))
    return says(label, 'after') && !says(label, 'before')
      ? found
      : [
          { ...first, which: 'before' },
          { ...second, which: 'after' },
        ]
  return found.some(({ which }) => which) ? undefined : found
}

/**
 * Zero-flow values that a title names behind or in brackets: "Depressurisation (zero flow −1.2 / −0.8 Pa)",
 * "Dep. – zero before −1.2 Pa, after −0.8 Pa". Undefined where what begins with the word for zero flow says more than values.
 */
export function zeroValuesWithin(text: string): ZeroInText[] | undefined {
  // "Last test 2024: zero −0.4 Pa" speaks of another test.
  if (YEAR.test(text)) return undefined
  const whole = zeroValuesIn(text)
  if (whole || text.length > 90) return whole
  for (const { index } of text.matchAll(/(?<![\p{L}\p{N}])[\p{L}Δδ∆][\p{L}\p{N}₀_]*/gu)) {
    const rest = text.slice(index)
    const words = rest.split(/\s+/)
    const begins =
      says(readLabel(words[0] ?? ''), 'zero') ||
      (says(readLabel(words.slice(0, 2).join(' ')), 'zero') && !says(readLabel(words[1] ?? ''), 'zero'))
    if (!begins) continue
    const end = rest.trimEnd().replace(/[.:]$/, '').trimEnd()
    const own = /[)\]]$/.test(end) ? end.slice(0, -1) : rest
    // A number alone may count something: "zero flow 2".
    const front = own.split(/\s[-+−–]?\s?\d/)[0] ?? ''
    if (LIMITING.test(front)) return undefined
    // Read from further on, the first values would be lost.
    if (!/[:=]/.test(own) && !isPlain(readLabel(front))) return undefined
    const values = zeroValuesIn(/[:=]/.test(own) ? own : colonBeforeNumber(own))
    return values?.every((one) => one.unit || isFraction(one.value) || values.length > 1) ? values : undefined
  }
  return undefined
}

const namesBoth = (text: string): boolean => {
  const label = readLabel(text)
  return says(label, 'zero') && says(label, 'dep') && says(label, 'pres') && directionsIn(text).length > 1
}

/** Words of a text that name a direction, where both are named once. */
function directionsIn(text: string): { direction: Direction; from: number; to: number }[] {
  const found = [...text.matchAll(/\p{L}{3,}/gu)].flatMap(({ 0: word, index }) => {
    const direction = directionIn(readLabel(word))
    return direction && !says(readLabel(word), 'pressure')
      ? [{ direction, from: index, to: index + word.length }]
      : []
  })
  return found.length === 2 && found[0]?.direction !== found[1]?.direction ? found : []
}

/** "Zero flow (Pa): depressurisation −1.2 and −0.8, pressurisation 0.3 and 0.5": what a text states for each direction. */
export function zeroOfBoth(
  text: string,
): { direction: Direction; values: readonly ZeroInText[] }[] | undefined {
  if (text.length > MOST_OF_BOTH || !says(readLabel(text), 'zero')) return undefined
  const [first, second] = directionsIn(text)
  if (!first || !second) return undefined
  const parts = [
    { ...first, own: text.slice(first.to, second.from) },
    { ...second, own: text.slice(second.to) },
  ].map(({ direction, own }) => ({
    direction,
    values: zeroValuesIn(`p0: ${withoutEnds(own)}`),
  }))
  return parts.every((one): one is { direction: Direction; values: ZeroInText[] } => one.values !== undefined)
    ? parts
    : undefined
}

const MOST_OF_BOTH = 160

/** What stands between the signs that part it from its neighbours. */
function withoutEnds(text: string): string {
  let [from, to] = [0, text.length]
  while (from < to && ' :=,;.\t'.includes(text[from] as string)) from++
  while (to > from && ' :=,;.\t'.includes(text[to - 1] as string)) to--
  return text.slice(from, to)
}

/** "−1.5 / +0.2 (mean −1.3 Pa)", "+0.2 / −1.5, mean −1.3 Pa": the mean of all is the zero flow, whatever stands in front of it. */
export function meanAtEnd(text: string): ZeroInText | undefined {
  if (text.length > 90) return undefined
  const remark =
    /\(([^()]{3,40})\)\s*$/.exec(text)?.[1] ?? /\d[^\d,;]{0,9}[,;]\s+(\p{L}[^,;()]{3,39})$/u.exec(text)?.[1]
  if (remark === undefined || statisticIn(remark) !== 'mean') return undefined
  const value = pieceOf(remark)
  const when = value && !value.which ? whenIn(text) : undefined
  return value && { ...value, ...(when ? { which: when } : {}) }
}

const YEAR = /(?<!\d)(?:19|20)\d\d(?!\d)/

/** The words of a text: in "P0 = −2.0 / −1.2" the 2 is no second zero flow. */
export const withoutFigures = (text: string): Label =>
  readLabel(text.replace(/(?<![\p{L}\p{N}.,])(?:[-+−–]\s?\d+(?:[.,]\d+)?|\d+[.,]\d+)/gu, ' '))

/** Words that say no more than that a value is a zero-flow pressure. */
const KNOWN = ['zero', 'before', 'after', 'average', 'pressure', 'dep', 'pres'] as const

const NEUTRAL = new Set(
  'the of a al der die das den dem des de du la le les il lo el het och test tests reading readings measurement messung messreihe versuch mesure mesures essai prova misura prueba ensayo meting proef pomiar mereni maling mittaus'.split(
    ' ',
  ),
)
/** "Zero flow (max. 5 Pa)" states a limit or an extreme, and no value. */
const isKnown = (token: string): boolean =>
  statisticIn(token) !== 'other' &&
  (NEUTRAL.has(token) || KNOWN.some((concept) => says(readLabel(token), concept)))

/** "Zero flow pressure before", and not "baseline not below". */
const isPlain = ({ tokens }: Label): boolean =>
  tokens.every((token) => isKnown(token) || says(readLabel(token), 'flow'))

/** The words in front of the first number as its label. */
const colonBeforeNumber = (text: string): string => text.replace(/(?<!\s)\s+(?=[-+−–]?\s?\d)/, ': ')

const isFraction = (value: number): boolean => value !== Math.round(value)

/** "Before" or "after" where a text says one of them. */
function whenIn(text: string): 'before' | 'after' | undefined {
  const label = readLabel(text)
  const [before, after] = [says(label, 'before'), says(label, 'after')]
  return before === after ? undefined : before ? 'before' : 'after'
}

/** In front of a number: "(≤ 5 Pa)" is what it may be. */
const LIMITING = /[<>≤≥±]/

/** "nachher Δp02 = −0.8 Pa": the figures of the symbol are none of the value. */
const withoutSymbols = (piece: string): string =>
  piece.replace(SYMBOL, (_, figure: string) =>
    figure === '1' ? 'before' : figure === '2' ? 'after' : 'zero',
  )

const SYMBOL = /(?<![\p{L}\p{N}])[Δδ∆d]?p_?0,?([12]?)(?=\s?[:=])/giu

/** One number with nothing but its unit and words of zero flow, before or after around it. */
function pieceOf(piece: string): ZeroInText | undefined {
  const match = /^((?:[^\d+−–-]*[^\d+−–\-\p{L}])?)([-+−–]?\s?\d+(?:[.,]\d+)?)(?![\d.,])\s*([\s\S]*)$/u.exec(
    withoutSymbols(piece).trim(),
  )
  if (!match) return undefined
  const [, front = '', figure = '', behind = ''] = match
  const words = behind.split(/\s+/).filter((word) => word !== '')
  const unit = bareUnit(words[0] ?? '')
  const rest = `${front} ${words.slice(unit ? 1 : 0).join(' ')}`.trim()
  const label = readLabel(rest)
  if (LIMITING.test(front) || !label.tokens.every(isKnown) || (unit && unit.kind !== 'pressure'))
    return undefined
  const [before, after] = [says(label, 'before'), says(label, 'after')]
  if (before && after) return undefined
  return {
    value: figureOf(figure),
    ...(unit ? { unit } : {}),
    ...(before ? { which: 'before' as const } : after ? { which: 'after' as const } : {}),
  }
}
