import { bareUnit } from '../../cells/stated-unit.js'
import { formPlaces, type View } from '../grid/view.js'
import { isPlaceholder, readLabel, says } from '../words/label.js'

/** "Outside | minus 4.5 °C" */
const DEGREES = /\d\s?°/

/** "Inside temperature | room temperature": the words where a temperature is expected. Read where none was found. */
export function unreadTemperatureIn(
  views: readonly View[],
  side: 'inside' | 'outside',
): { readonly text: string; readonly cell: string } | undefined {
  for (const view of views)
    for (const [row, column] of formPlaces(view)) {
      const label = view.text(row, column)
      if (label === undefined || label.length > 60) continue
      const at = view.right(row, column) + 1
      const text = view.text(row, at)
      if (text === undefined || text.length > 60 || bareUnit(text) || isPlaceholder(text)) continue
      const words = readLabel(label)
      if (!says(words, side) || !(says(words, 'temperature') || DEGREES.test(text))) continue
      // Beside further words it may be a heading.
      const isAlone =
        view.at(row, at + 1) === undefined || bareUnit(view.text(row, at + 1) ?? '') !== undefined
      if (isAlone && view.at(row, column - 1) === undefined) return { text, cell: view.address(row, at) }
    }
  return undefined
}
