import { figureOf } from '../../cells/number-text.js'
import { formPlaces, type View } from '../grid/view.js'
import type { Concept } from '../words/concepts.js'
import { readLabel, says } from '../words/label.js'
import { LIKELY_MOST } from './entry.js'

/** A text that speaks of zero flow with what looks like a value in it or beside it. */
export interface Mention {
  readonly label: string
  readonly labelCell: string
}

const MOST_FOUND = 4

/** Texts with values that may be zero-flow pressures and that nothing was read from: for runs that have none. */
export function mentionsOfZeroFlow(
  views: readonly View[],
  isRead: (cell: string) => boolean,
): { valued: Mention[]; bare: Mention[] } {
  const valued: Mention[] = []
  const bare: Mention[] = []
  for (const view of views)
    for (const [row, column] of formPlaces(view)) {
      const text = view.text(row, column)
      if (text === undefined || text.length > 160) continue
      if (!says(readLabel(text), 'zero') && !statesSmallPressure(text)) continue
      const list = holdsValue(text) || hasValueNear(view, row, column, isRead) ? valued : bare
      const cell = view.address(row, column)
      if (!isRead(cell) && list.length < MOST_FOUND) list.push({ label: text, labelCell: cell })
    }
  return { valued, bare }
}

const FIGURE = /(?<![\p{L}\p{N}.,:/])([-+−–]?\s?\d{1,2}(?:[.,]\d+)?)(?![\d:/]|[.,]\d)(\s*Pa\b)?/gu

/** A figure with its unit, a sign or decimals that a house can have with the fan off. */
function holdsValue(text: string): boolean {
  return [...text.matchAll(FIGURE)].some(([whole, figure = '', unit]) => {
    const value = figureOf(figure)
    const isOther =
      unit === undefined &&
      /^\s*(?:s|sec|min|h|%|°|m|l)\b/.test(text.slice(text.indexOf(whole) + whole.length))
    return !isOther && Math.abs(value) <= LIKELY_MOST && (unit !== undefined || /[-+−–.,]/.test(figure))
  })
}

/** Words of texts whose small pressures are none of the house. */
const OF_OTHERS: readonly Concept[] = ['uncertainty', 'target', 'device', 'example', 'barometer', 'former']

/** "Building at rest: −1.3 Pa": a small pressure with its unit in a text, in whatever words. Limits and accuracies are none. */
export function statesSmallPressure(text: string): boolean {
  if (!text.includes('Pa') || OF_OTHERS.some((one) => says(readLabel(text), one))) return false
  return [...text.matchAll(FIGURE)].some(([, figure = '', unit], index, all) => {
    const front = text.slice(0, all[index]?.index)
    return (
      unit !== undefined &&
      /[-+−–.,]/.test(figure) &&
      Math.abs(figureOf(figure)) <= LIKELY_MOST &&
      !LIMITED.test(front) &&
      !/\d\s*$/.test(front)
    )
  })
}

/** What stands in front of a limit, an extreme or one end of a span. */
const LIMITED =
  /(?:[<>≤≥±]|\b(?:max|min|maximum|minimum|below|above|under|over|within|than|least|most|limit|between|and|to|unter|über|zwischen|und|bis|von|höchstens|mindestens|sous|entre|et|moins)\.?)\s*$/iu

function hasValueNear(view: View, row: number, column: number, isRead: (cell: string) => boolean): boolean {
  const unit = readLabel(view.text(row, column) ?? '').unit
  if (unit && unit.kind !== 'pressure') return false
  const isValue = (at: number, right: number): boolean => {
    const content = view.at(at, right)
    if (isRead(view.address(at, right))) return false
    if (content?.kind === 'text') return holdsValue(content.text)
    if (content?.kind !== 'number' || (content.written.unit && content.written.unit.kind !== 'pressure'))
      return false
    return Math.abs(content.written.value) <= LIKELY_MOST
  }
  return (
    [1, 2, 3].some((right) => isValue(row, column + right)) ||
    [1, 2].some((down) => isValue(row + down, column) || isValue(row + down, column + 1))
  )
}
