import { withMinus } from '../../../catalogue/words.js'
import { bareUnit } from '../../cells/stated-unit.js'
import { shown } from '../../cells/units.js'
import type { Content } from '../grid/cell-content.js'
import { formPlaces, type View } from '../grid/view.js'
import { type Label, readLabel, says } from '../words/label.js'

/** What stands where the volume is expected, and why it cannot be one. */
export interface Unread {
  readonly text: string
  readonly cell: string
  readonly why: string
}

/** "Volume | 287 + 150 = 437": what is beside a label of the volume and cannot be used. Read where no volume was found. */
export function unreadVolumeIn(views: readonly View[]): Unread | undefined {
  for (const view of views)
    for (const [row, column] of formPlaces(view)) {
      const text = view.text(row, column)
      if (text === undefined || text.length > 60) continue
      const at = view.right(row, column) + 1
      const content = view.at(row, at)
      if (!content) continue
      const label = readLabel(text)
      if (!says(label, 'volume') || says(label, 'flow')) continue
      const isAlone = view.at(row, at + 1) === undefined && view.at(row, column - 1) === undefined
      const unread = unreadOf(content, label, isAlone)
      if (unread) return { ...unread, cell: view.address(row, at) }
    }
  return undefined
}

/** @param isAlone nothing else is in the row: text behind the label is its value, and no further heading */
function unreadOf(content: Content, label: Label, isAlone: boolean): Omit<Unread, 'cell'> | undefined {
  if (content.kind === 'text') {
    const { text } = content
    if (bareUnit(text) || !(isAlone || /\d/.test(text))) return undefined
    return { text, why: 'which is not one number' }
  }
  if (content.kind === 'error' && !content.unstored) return { text: content.text, why: 'which is an error' }
  if (content.kind !== 'number') return undefined
  const { value, unit = label.unit } = content.written
  const text = withMinus(String(value))
  if (!(value > 0)) return { text, why: 'but a volume must be above 0' }
  return unit && unit.kind !== 'volume'
    ? { text, why: `with the unit ${shown(unit.unit)}, which is not a unit of volume` }
    : undefined
}
