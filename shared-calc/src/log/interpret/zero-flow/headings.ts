import { bareUnit } from '../../cells/stated-unit.js'
import type { View } from '../grid/view.js'
import { isPlaceholder, type Label, readLabel } from '../words/label.js'
import { isAnswered } from '../words/yes-or-no.js'

/** "Δp01+", "p02 (−)": the mean of the values of one sign only, as a standard asks for beside the mean of all. */
export const isOfOneSign = (text: string): boolean => {
  const bare = text
    .replace(/\s/g, '')
    .replace(/[([]?Pa[)\]]?$/, '')
    .replace(/[)\]]$/, '')
  return /\d[([]?[+−–-]$/.test(bare) || MEAN_OF_SIGN.test(bare)
}

/** "+", "mean +", "avg. (−": blanks and the last bracket are off already. */
const MEAN_OF_SIGN =
  /^(?:(?:mean|average|avg\.?|av\.?|mittel(?:wert)?|moy(?:enne)?\.?|gem\.?|media|snitt?)?[([]?[+−–-])$/i

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
    // "Zero flow subtracted? | no" heads nothing.
    if (text !== undefined && isAnswered(view.text(at, column - 1) ?? '', text)) return undefined
    // "min" over a column of zero flow is the least value, not minutes.
    if (text !== undefined)
      return bareUnit(text) && !NOT_VALUES.test(text.trim().toLowerCase()) ? undefined : readLabel(text)
    if (view.number(at, column) !== undefined) continue
  }
  return undefined
}

/** Words of a sign; "mean of the negative values" is that of one sign. */
const SIGNED = /^(?:plus|minus|pos|neg|positiv.*|negativ.*)$/

/** "Mean of positive values": "negative pressure" may head the depressurisation. */
const isMeanOfSign = ({ tokens }: Label): boolean =>
  tokens.length <= 6 &&
  tokens.some((token) => SIGNED.test(token)) &&
  tokens.some((token) => MEANS.test(token) || /^(?:values?|werte?|valeurs?|readings?)$/.test(token))

/** What the text in front of a value of zero flow makes of it: the mean of all, or a figure that is no mean and no sample. */
export function statisticIn(lead: string | undefined): 'mean' | 'other' | undefined {
  if (lead === undefined || lead.length > 60) return undefined
  const label = readLabel(lead)
  if (isOfOneSign(lead) || label.tokens.some((token) => EXTREMES.test(token))) return 'other'
  const signed = label.tokens.some((token) => SIGNED.test(token))
  const mean = label.tokens.some((token) => MEANS.test(token))
  return signed ? 'other' : mean ? 'mean' : undefined
}

/** "Baseline range", "zero-flow limit": a figure about zero flow, and no pressure of it. "Zero flow min / max / mean" holds one. */
export function isAbout(text: string): boolean {
  const listed = statisticsIn(text)
  return statisticIn(text) === 'other' && !(listed.length > 1 && listed.includes('mean'))
}

const EXTREMES =
  /^(?:mini?|maxi?|maks|minimum|maximum|highest|lowest|hochste|niedrigste|std|sd|stdev|stabw|range|spread|drift|limit|grenzwert|limite|allowed)$/
const MEANS =
  /^(?:mean|average|avg|av|avge|mittel|mittelwert|mw|durchschnitt|moyenne|moy|gemiddelde|gem|srednia|promedio|media|snit|snitt|gennemsnit|gjennomsnitt|medel|medelvarde|prumer|keskiarvo|overall)$/

/** "Zero flow min / max / avg": what the values behind such a label are, in their order. */
export const statisticsIn = (text: string): ('mean' | 'other')[] =>
  readLabel(text).tokens.flatMap((token) =>
    EXTREMES.test(token) ? 'other' : MEANS.test(token) ? 'mean' : [],
  )

/** "Number of values", "30 s", "n": what says how zero flow was logged. */
export const isCount = ({ tokens }: Label): boolean => tokens.some((token) => COUNTS.test(token))

const COUNTS =
  /^(?:count|number|nb|nbre|nombre|anzahl|antal|antall|aantal|liczba|numero|n|dauer|duration|seconds|sek|sec)$/

/** "Samples", "no. of points" over a column: how many were taken. With a word of zero flow it may head the values themselves. */
const SAMPLES = /^(?:no|of|nr|samples?|points?|stichproben?|messpunkte?|echantillons?|proven|muestras?)$/

/** A text that names nothing: a unit or a dash. "min" is the least value, not minutes. */
export const isUnitOrBlank = (text: string): boolean =>
  isPlaceholder(text) || (bareUnit(text) !== undefined && !NOT_VALUES.test(text.trim().toLowerCase()))
