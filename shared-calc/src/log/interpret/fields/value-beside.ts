import { bareUnit } from '../../cells/stated-unit.js'
import type { KnownUnit } from '../../cells/units.js'
import type { View } from '../grid/view.js'
import { isPlaceholder, type Label, readLabel, says } from '../words/label.js'
import { classify } from './classify.js'
import { type FoundField, made } from './found-field.js'
import { isLineOfForm, isLineOfUnits } from './values-below.js'

/** So many blanks may stand between a label and its value. */
export const BLANKS = 6

/** The value behind a label in its line, or one line down and one column on. */
export function toTheRight(
  view: View,
  row: number,
  column: number,
  label: Label,
  isTaken: (row: number, column: number) => boolean,
): FoundField | undefined {
  if (isAmongLabels(view, row, column)) return undefined
  let blanks = 0
  for (let at = view.right(row, column) + 1; at < view.columns && blanks <= BLANKS; at++) {
    const content = view.at(row, at)
    if (!content) {
      blanks++
      continue
    }
    if (isTaken(row, at)) return undefined
    if (content.kind === 'struck' || isHiddenBeforeAnother(view, row, at)) continue
    // What is hidden beyond a gap is of something else.
    if (blanks > 0 && view.hidden(row, at) && !view.hidden(row, column)) continue
    if (content.kind === 'text' && bareUnit(content.text)) {
      // "Volume | m³ | 412.6": the unit stands before the value.
      const unit = bareUnit(content.text)
      const next = view.at(row, at + 1)
      if (next?.kind === 'number')
        return made(view, { row, column: at + 1 }, { row, column }, label, next, unit)
      return undefined
    }
    const unit = unitBehind(view, row, at)
    if (content.kind === 'text' && !content.numbers)
      if (isLabelItself(view, row, at, content.text) || isAmongLabels(view, row, at)) return undefined
    const found =
      temperaturePair(view, { row, column: at }, { row, column }, label) ??
      made(view, { row, column: at }, { row, column }, label, content, unit)
    // In a list of rooms the unit stands over the column.
    const over = found && !found.unit && at > column + 1 ? unitOver(view, row, at) : undefined
    return over && (over.kind === 'volume' || over.kind === 'area')
      ? made(view, { row, column: at }, { row, column }, label, content, over)
      : found
  }
  return belowToTheRight(view, row, column, label, isTaken)
}

/** The unit alone in a cell behind a value, past one that is empty. */
function unitBehind(view: View, row: number, column: number): KnownUnit | undefined {
  const next = view.right(row, column) + 1
  const text = view.text(row, view.at(row, next) ? next : next + 1)
  return text === undefined ? undefined : bareUnit(text)
}

/** A hidden column with a value in front of one that is shown: a draft, or the figures of an earlier job. */
const isHiddenBeforeAnother = (view: View, row: number, at: number): boolean => {
  const [kind, next] = [view.at(row, at)?.kind, view.at(row, at + 1)?.kind]
  const isAnother = next === kind && next !== undefined
  return isAnother && view.hidden(row, at) && !view.hidden(row, at + 1)
}

/** "Enter the volume" in a line of its own, with the value below and one column on. */
function belowToTheRight(
  view: View,
  row: number,
  column: number,
  label: Label,
  isTaken: (row: number, column: number) => boolean,
): FoundField | undefined {
  const content = view.at(row + 1, column + 1)
  if (!content || view.at(row + 1, column) || view.at(row, column + 1) || isTaken(row + 1, column + 1))
    return undefined
  // A second value below without a label of its own makes it a list.
  const isList = view.number(row + 2, column + 1) !== undefined && view.text(row + 2, column) === undefined
  if (content.kind !== 'number' || isList) return undefined
  const unit = unitBehind(view, row + 1, column + 1)
  return made(view, { row: row + 1, column: column + 1 }, { row, column }, label, content, unit)
}

/** Four texts or more side by side with values below: labels, of which none is the value of another. */
function isAmongLabels(view: View, row: number, column: number): boolean {
  if (isLineOfForm(view, row, column) || isLineOfForm(view, row - 1, column)) return true
  if (view.text(row, column + 1) === undefined) return false
  let left = column
  while (view.text(row, left - 1) !== undefined) left--
  let end = left
  while (view.text(row, end) !== undefined) end++
  const line = isLineOfUnits(view, row + 1, left, end) ? row + 2 : row + 1
  let values = 0
  let labelled = 0
  let right = left
  for (; right < end; right++) {
    const below = view.at(line, right)
    if (below?.kind !== 'number' && below?.kind !== 'date') continue
    values++
    // A line of labels each with its value is a line of its own.
    if (right > left && view.text(line, right - 1) !== undefined) labelled++
  }
  return right - left >= 4 && values >= 2 && labelled < values
}

/** "In / out | 20.3 °C | 5.2 °C": two temperatures in neighbouring cells behind one label. */
function temperaturePair(
  view: View,
  at: { row: number; column: number },
  labelAt: { row: number; column: number },
  label: Label,
): FoundField | undefined {
  const [first, second] = [view.at(at.row, at.column), view.at(at.row, at.column + 1)]
  if (first?.kind !== 'number' || second?.kind !== 'number') return undefined
  if (!says(label, 'inside') || !says(label, 'outside')) return undefined
  const numbers = [first.written, second.written]
  const text = numbers.map(({ value }) => value).join(' / ')
  const field = made(view, at, labelAt, label, { kind: 'text', text, numbers }, undefined)
  return field && { ...field, also: [view.address(at.row, at.column + 1)] }
}

/** "Date", "Volume (m³)": a word that labels another value, and names no house and nobody. */
const isOneOfOurs = (label: Label): boolean =>
  label.tokens.length - (label.unit && !label.loose ? 1 : 0) <= 1 &&
  (['date', 'volume', 'temperature', 'barometer', 'humidity', 'zero'] as const).some((one) =>
    says(label, one),
  )

/** A text that is the label of the value after it, not a value. */
function isLabelItself(view: View, row: number, column: number, text: string): boolean {
  if (text.endsWith(':')) return true
  if (isOneOfOurs(readLabel(text))) return true
  const next = view.at(row, column + 1)
  if (next?.kind !== 'number' && next?.kind !== 'date') return false
  const kind = next.kind
  return (
    classify(
      readLabel(text),
      kind,
      readLabel(text).unit,
      kind === 'number' ? next.written.value : undefined,
    ) !== undefined
  )
}

/** The unit that stands over a column of numbers, alone or in its heading. */
function unitOver(view: View, row: number, column: number): KnownUnit | undefined {
  for (let at = row - 1; at >= Math.max(0, row - 60); at--) {
    const text = view.text(at, column)
    const unit = text === undefined ? undefined : (bareUnit(text) ?? readLabel(text).unit)
    if (unit || (text !== undefined && !isPlaceholder(text))) return unit
  }
  return undefined
}
