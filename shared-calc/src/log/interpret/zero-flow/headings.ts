import { bareUnit } from '../../cells/stated-unit.js'
import type { View } from '../grid/view.js'
import { type Label, readLabel } from '../words/label.js'

/** "Δp01+", "p02 (−)": the mean of the values of one sign only, as a standard asks for beside the mean of all. */
export const isOfOneSign = (text: string): boolean => {
  const bare = text
    .replace(/\s/g, '')
    .replace(/[([]?Pa[)\]]?$/, '')
    .replace(/[)\]]$/, '')
  return /\d[([]?[+−–-]$/.test(bare)
}

export const NOT_VALUES = /^(min|max|std|sd|stdev|stabw|s|count|dauer|duration)$/

/** Headings over figures that are no readings: extremes, spreads, means of one sign. */
export const namesNoValue = (heading: Label | undefined): boolean =>
  heading !== undefined &&
  (isOfOneSign(heading.text) ||
    (heading.tokens.length <= 2 && heading.tokens.some((token) => NOT_VALUES.test(token))))

export function headingAbove(view: View, row: number, column: number, most: number): Label | undefined {
  for (let at = row - 1; at >= Math.max(0, row - most); at--) {
    const text = view.text(at, column)
    // "min" over a column of zero flow is the least value, not minutes.
    if (text !== undefined)
      return bareUnit(text) && !NOT_VALUES.test(text.trim().toLowerCase()) ? undefined : readLabel(text)
    if (view.number(at, column) !== undefined) continue
  }
  return undefined
}
