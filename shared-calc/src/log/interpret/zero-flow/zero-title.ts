import type { View } from '../grid/view.js'
import { type Label, readLabel, says } from '../words/label.js'

/** A text of the sheet with its place. */
export interface Word {
  readonly label: Label
  readonly row: number
  readonly column: number
}

/** A title above or left of a "before" or "after" that names zero flow. */
export function zeroTitle(view: View, row: number, column: number): Word | undefined {
  for (let at = row; at >= Math.max(0, row - 6); at--)
    for (let left = column; left >= Math.max(0, column - 8); left--) {
      if (at === row && left === column) continue
      const text = view.text(at, left)
      const label = text === undefined || text.length > 90 ? undefined : readLabel(text)
      if (label && says(label, 'zero')) return { label, row: at, column: left }
    }
  return undefined
}
