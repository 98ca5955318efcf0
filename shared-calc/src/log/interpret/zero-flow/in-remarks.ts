import { LIMITS } from '../../limits.js'
import { formPlaces, type View } from '../grid/view.js'
import { directionIn, readLabel, says } from '../words/label.js'
import type { ZeroEntry } from './entry.js'
import { zeroValuesWithin } from './in-text.js'

/**
 * Zero-flow values written as remarks: attached to a cell, beside a reading, or in a sentence among others: "Light wind. Zero flow
 * before −1.2 Pa." For logs that have none elsewhere.
 * @param headings - cells of headings, which state no value
 */
export function zeroFlowInRemarks(view: View, headings: ReadonlySet<string>): ZeroEntry[] {
  const found: ZeroEntry[] = []
  for (const [row, column] of formPlaces(view)) {
    if (headings.has(view.address(row, column))) continue
    for (const text of [view.text(row, column), view.comment(row, column)])
      for (const sentence of sentencesOf(text ?? '')) found.push(...entriesIn(view, row, column, sentence))
  }
  return found
}

/** A full stop in front of a capital letter ends a sentence; that of a number does not. */
const sentencesOf = (text: string): string[] =>
  text.length > LIMITS.commentCharacters ? [] : text.split(/\n|\.\s+(?=\p{Lu})|\.$/u).map((one) => one.trim())

function entriesIn(view: View, row: number, column: number, text: string): ZeroEntry[] {
  const label = readLabel(text)
  if (!says(label, 'zero')) return []
  const values = zeroValuesWithin(text)
  // "0 vor" names zero flow and states no value.
  if (!values?.some(({ value }) => value !== 0)) return []
  const cell = view.address(row, column)
  const direction = directionIn(label)
  const alone = says(label, 'before') === says(label, 'after') ? undefined : says(label, 'before')
  return values.map((value) => {
    const which = value.which ?? (alone === undefined ? undefined : alone ? 'before' : 'after')
    return {
      view,
      row,
      column,
      label: text,
      labelCell: cell,
      ...(which ? { which } : {}),
      ...(direction ? { direction } : {}),
      figures: [{ ...value, cell }],
    }
  })
}
