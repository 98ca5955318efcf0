import type { View } from '../grid/view.js'
import { readLabel, says } from './label.js'

/** When a value of a line was taken, by the heading over it. */
export type Moment = 'before' | 'after' | 'mean'

/** A heading of these stands so many rows above its values at most. */
const ROWS = 12

/**
 * What one line of headings says of values side by side: "before | after | mean". Nothing where no line above names both before and
 * after, each over as many of the columns as the other.
 */
export function momentsAbove(
  view: View,
  row: number,
  columns: readonly number[],
): readonly (Moment | undefined)[] {
  // One value alone is not of two moments.
  if (columns.length < 2) return []
  for (let at = row - 1; at >= Math.max(0, row - ROWS); at--) {
    const found = columns.map((column) => momentIn(view.text(at, column)))
    const has = (moment: Moment) => found.filter((one) => one === moment).length
    if (has('before') > 0 && has('before') === has('after')) return found
  }
  return []
}

/** When a value was taken, by a text of one to three words. */
export function momentIn(text: string | undefined): Moment | undefined {
  const label = text === undefined || text.length > 24 ? undefined : readLabel(text)
  if (!label || label.tokens.length > 3) return undefined
  const [before, after] = [says(label, 'before'), says(label, 'after')]
  if (before !== after) return before ? 'before' : 'after'
  return !before && says(label, 'average') ? 'mean' : undefined
}
