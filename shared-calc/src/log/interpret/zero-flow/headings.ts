import { bareUnit } from '../../cells/stated-unit.js'
import type { View } from '../grid/view.js'
import { isPlaceholder, type Label, readLabel, says } from '../words/label.js'
import { isAnswered } from '../words/yes-or-no.js'

/** "Δp01+", "p02 (−)", "mean of + (Pa)": the mean of the values of one sign only, as a standard asks for beside the mean of all. */
export function isOfOneSign(text: string): boolean {
  const bare = withoutMeans(text.replace(UNIT_AT_END, '').trim())
  const front = /^([\s\S]*?)[([]?\s?[+−–-]\s?[)\]]?$/.exec(bare)?.[1]
  if (front === undefined) return false
  return /\d\s?$/.test(front) || readLabel(front).tokens.every((token) => isOfMeans(token))
}

/** "P0+" of "P0+ moyen". */
const withoutMeans = (text: string): string => {
  const cut = /^(\S*\d[+−–-])\s+\p{L}/u.exec(text)?.[1]
  const rest = cut === undefined ? [] : readLabel(text.slice(cut.length)).tokens
  return cut !== undefined && rest.every(isOfMeans) ? cut : text
}

const UNIT_AT_END = /[([]?Pa[)\]]?\s*$/

const isOfMeans = (token: string): boolean => says(readLabel(token), 'mean') || OF_MEANS.test(token)

/** "Mean of the values" in the languages of logs. */
const OF_MEANS =
  /^(?:of|the|all|der|des|von|van|de|di|av|af|z|values?|werte?|valeurs?|waarden|valores|valori|readings?|verdier|varden|vaerdier|wartosci|hodnot)$/

/** A table of zero flow has a row for each run, before and after. */
export const HEADED = 6

/** A line of means, extremes and so on has a column for each moment and direction. */
export const FAR = 12

export const NOT_VALUES = /^(min|max|std|sd|stdev|stabw|s|count|dauer|duration)$/

/** "−1.2 | ± | 0.3": how uncertain the value is. */
export const SPREAD = /^\s*(?:±|\+\/-|\+-|u\s?=?|s\s?=)\s*$/i

/** Headings over figures that are no readings: extremes, spreads, means of one sign. */
export const namesNoValue = (heading: Label | undefined): boolean =>
  heading !== undefined &&
  ((heading.tokens.length <= 4 && isCount(heading)) ||
    (heading.tokens.length > 0 && heading.tokens.every((token) => SAMPLES.test(token))) ||
    isOfOneSign(heading.text) ||
    isMeanOfSign(heading) ||
    (heading.tokens.length <= 2 && heading.tokens.some((token) => NOT_VALUES.test(token))))

const hasPlus = (view: View, row: number, column: number): boolean =>
  [-3, -2, -1, 1, 2, 3].some((step) => view.text(row, column + step)?.trim() === '+')

export function headingAbove(view: View, row: number, column: number, most: number): Label | undefined {
  for (let at = row - 1; at >= Math.max(0, row - most); at--) {
    const text = view.text(at, column)
    // "-" above a value is another one that is missing, unless a "+" beside it makes it a sign.
    if (text !== undefined && isPlaceholder(text) && !hasPlus(view, at, column)) continue
    // "N | E | S | W": the sides of the house, and neither a number nor a spread.
    if (text !== undefined && isSideOfHouse(view, at, column)) return undefined
    // "n = | 0.65" in a line above is a result with its value, and heads nothing.
    if (text !== undefined && view.number(at, column + 1) !== undefined && namesNoValue(readLabel(text)))
      return undefined
    // "Zero flow subtracted? | no" heads nothing.
    if (text !== undefined && isAnswered(view.text(at, column - 1) ?? '', text)) return undefined
    // "Customer: | Sample" is the value of a label, and heads nothing.
    if (text !== undefined && /:\s?$/.test(view.text(at, column - 1) ?? '')) return undefined
    // "min" over a column of zero flow is the least value, not minutes.
    if (text !== undefined)
      return bareUnit(text) && !NOT_VALUES.test(text.trim().toLowerCase()) ? undefined : readLabel(text)
    if (view.number(at, column) !== undefined) continue
  }
  return undefined
}

/** "N" or "S" beside the letter of east or west. */
const isSideOfHouse = (view: View, row: number, column: number): boolean => {
  const letter = (at: number) => (view.text(row, at) ?? '').trim().toLowerCase()
  return (
    /^[ns]$/.test(letter(column)) &&
    [-3, -2, -1, 1, 2, 3].some((step) => /^[eowvöø]$/.test(letter(column + step)))
  )
}

/** "Mean of positive values": "negative pressure" may head the depressurisation. */
const isMeanOfSign = (label: Label): boolean =>
  label.tokens.length <= 6 &&
  says(label, 'signed') &&
  (says(label, 'mean') || label.tokens.some((token) => /^(?:values?|werte?|valeurs?|readings?)$/.test(token)))

/** "Negative pressure: zero flow before": the name of the run. */
const RUN_IN_FRONT = /^\s*(?:negative|positive) pressure\s?[:,–-]/i

/** What the text in front of a value of zero flow makes of it: the mean of all, or a figure that is no mean and no sample. */
export function statisticIn(lead: string | undefined): 'mean' | 'other' | undefined {
  if (lead === undefined || lead.length > 60) return undefined
  const label = readLabel(lead.replace(RUN_IN_FRONT, ''))
  if (isOfOneSign(lead) || says(label, 'extreme') || says(label, 'signed')) return 'other'
  return says(label, 'mean') ? 'mean' : undefined
}

/** "Baseline range", "zero-flow limit": a figure about zero flow, and no pressure of it. "Zero flow min / max / mean" holds one. */
export function isAbout(label: string): boolean {
  // "Zero flow, start (max. 5 Pa)" holds one and says what it may be.
  const text = label.replace(/\([^()]*\)/g, (remark) => (/\d/.test(remark) ? '' : remark))
  const listed = statisticsIn(text)
  return statisticIn(text) === 'other' && !(listed.length > 1 && listed.includes('mean'))
}

/** "Zero flow min / max / avg": what the values behind such a label are, in their order. */
export const statisticsIn = (text: string): ('mean' | 'other')[] =>
  readLabel(text).tokens.flatMap((token) => {
    const word = readLabel(token)
    return says(word, 'extreme') ? 'other' : says(word, 'mean') ? 'mean' : []
  })

/** "Number of values", "30 s", "n": what says how zero flow was logged. */
export const isCount = ({ tokens: [first = '', ...rest] }: Label): boolean =>
  [first, ...rest].some((token) => COUNTS.test(token)) ||
  (/^(?:no|nr)$/.test(first) &&
    rest.length > 0 &&
    rest.every((token) => SAMPLES.test(token) || OF_MEANS.test(token)))

const COUNTS =
  /^(?:count|number|nb|nbre|nombre|anzahl|antal|antall|aantal|liczba|numero|n|dauer|duration|seconds|sek|sec)$/

/** "Samples", "no. of points" over a column: how many were taken. With a word of zero flow it may head the values themselves. */
const SAMPLES = /^(?:no|of|nr|samples?|points?|stichproben?|messpunkte?|echantillons?|proven|muestras?)$/

/** A text that names nothing: a unit or a dash. "min" is the least value, not minutes. */
export const isUnitOrBlank = (text: string): boolean =>
  isPlaceholder(text) || (bareUnit(text) !== undefined && !NOT_VALUES.test(text.trim().toLowerCase()))

/** 1, 2, 3 … behind or below a label of an empty form number its places. */
export const isNumbering = (figures: readonly { readonly value: number }[]): boolean =>
  figures.length > 2 && figures.every(({ value }, index) => value === index + 1)
