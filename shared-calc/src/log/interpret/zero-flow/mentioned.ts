import type { View } from '../grid/view.js'
import { readLabel, says } from '../words/label.js'

/** Texts that speak of zero flow, for a log of which none was read: at most a few, as label and cell. */
export function mentionsOfZeroFlow(views: readonly View[]): { label: string; labelCell: string }[] {
  const found: { label: string; labelCell: string }[] = []
  for (const view of views)
    for (let row = 0; row < Math.min(view.rows, 300); row++)
      for (let column = 0; column < Math.min(view.columns, 40) && found.length < MOST_MENTIONS; column++) {
        const text = view.text(row, column)
        if (text !== undefined && text.length <= 120 && says(readLabel(text), 'zero'))
          found.push({ label: text, labelCell: view.address(row, column) })
      }
  return found
}

const MOST_MENTIONS = 4
