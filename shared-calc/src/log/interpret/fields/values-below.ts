import { bareUnit } from '../../cells/stated-unit.js'
import type { View } from '../grid/view.js'
import { type Label, readLabel, says } from '../words/label.js'
import { type FoundField, made } from './found-field.js'

/** A line of labels with one line of values below. */
export function lineBelow(
  view: View,
  row: number,
  isTaken: (row: number, column: number) => boolean,
  used: ReadonlySet<string>,
): FoundField[] {
  const found: FoundField[] = []
  if (!isOverValues(view, row)) return found
  for (let column = 0; column < view.columns; column++) {
    const text = view.text(row, column)
    if (
      text === undefined ||
      text.length > 60 ||
      isTaken(row, column) ||
      used.has(view.address(row, column)) ||
      bareUnit(text)
    )
      continue
    let below = row + 1
    const between = view.text(below, column)
    const unit = between === undefined ? undefined : bareUnit(between)
    if (unit || (!view.at(below, column) && isUnderUnits(view, below, column))) below++
    const content = view.at(below, column)
    if (!content || isTaken(below, column) || used.has(view.address(below, column))) continue
    // More numbers below make a column, not a value.
    if (content.kind === 'number' && view.number(below + 1, column) !== undefined) continue
    const field = made(view, { row: below, column }, { row, column }, readLabel(text), content, unit)
    if (field) found.push(field)
  }
  const numeric = found.filter(({ content }) => content.kind === 'number' || content.kind === 'date')
  return numeric.length >= 2 ||
    (numeric.length === 1 && found.length > 1 && isLineOfForm(view, row, found[0]?.column))
    ? found
    : numeric.filter(
        ({ name, view: own, row: at, column }) => name !== 'area' && own.text(at, column + 1) === undefined,
      )
}

/** "Job no. | House | Date | Engineer" over a line with a value below each, and nothing below that. */
export function isLineOfForm(view: View, row: number, column = 0): boolean {
  if (view.text(row, column) === undefined || !view.at(row + 1, column) || view.at(row + 2, column))
    return false
  const filled = (line: number) =>
    Array.from({ length: Math.min(view.columns, MOST_IN_LINE) }, (_, at) => at).filter(
      (at) => view.at(line, at) !== undefined,
    )
  const labels = filled(row)
  return (
    labels.length >= 3 &&
    labels.every((at) => view.text(row, at) !== undefined) &&
    filled(row + 1).join() === labels.join() &&
    filled(row + 2).length === 0 &&
    labels.some((at) => {
      const label = readLabel(view.text(row, at) ?? '')
      const kind = view.at(row + 1, at)?.kind
      return kind === 'date'
        ? says(label, 'date')
        : kind === 'number' && label.unit !== undefined && !label.loose
    })
  )
}

/** Labels of a form side by side at most. */
const MOST_IN_LINE = 40

/** Whether a text of the line has a number or a day below it, or below the unit in between. */
function isOverValues(view: View, row: number): boolean {
  const isValue = (at: number, column: number): boolean => {
    const kind = view.at(at, column)?.kind
    return kind === 'number' || kind === 'date'
  }
  for (let column = 0; column < view.columns; column++)
    if ((isValue(row + 1, column) || isValue(row + 2, column)) && view.text(row, column) !== undefined)
      return true
  return false
}

/** A blank in a line of units. */
const isUnderUnits = (view: View, row: number, column: number): boolean => {
  let [left, end] = [column, column]
  while (view.text(row - 1, left - 1) !== undefined) left--
  while (view.text(row - 1, end) !== undefined) end++
  return isLineOfUnits(view, row, left, end)
}

/** "Total" in front of a number whose column is headed as a volume or an area. */
export function totalsOfColumns(
  view: View,
  isTaken: (row: number, column: number) => boolean,
  used: ReadonlySet<string>,
): FoundField[] {
  const found: FoundField[] = []
  for (let row = 1; row < view.rows; row++)
    for (let column = 0; column < Math.min(view.columns, 12); column++) {
      const text = view.text(row, column)
      if (text === undefined || text.length > 40 || isTaken(row, column) || !says(readLabel(text), 'total'))
        continue
      for (let at = column + 1; at < view.columns; at++) {
        const content = view.at(row, at)
        if (content?.kind !== 'number' || used.has(view.address(row, at))) continue
        const heading = unitHeading(view, row, at) ?? headingOf(view, row, at)
        const isArea = heading?.unit?.kind === 'area' && says(heading, 'envelope')
        if (!heading || !(isArea || heading.unit?.kind === 'volume' || says(heading, 'volume'))) continue
        const joined = readLabel(`${text} ${heading.text}`)
        const field = made(view, { row, column: at }, { row, column }, joined, content, heading.unit)
        if (field) found.push(field)
      }
    }
  return found
}

/** "Volumes | m³" over the names and numbers of rooms: the words stand in front of the unit that heads the column. */
function unitHeading(view: View, row: number, column: number): Label | undefined {
  for (let at = row - 1; at >= Math.max(0, row - 60); at--) {
    const text = view.text(at, column)
    if (text === undefined) continue
    const front = bareUnit(text) && view.text(at, column - 1)
    return front ? readLabel(`${front} (${text})`) : undefined
  }
  return undefined
}

/** The first text above a column of numbers. */
function headingOf(view: View, row: number, column: number): Label | undefined {
  for (let at = row - 1; at >= Math.max(0, row - 60); at--) {
    const text = view.text(at, column)
    if (text !== undefined && !bareUnit(text)) return readLabel(text)
  }
  return undefined
}

/** Below headings a line with nothing but their units, of which names and dates have none. */
export function isLineOfUnits(view: View, row: number, left: number, end: number): boolean {
  const held = Array.from({ length: end - left }, (_, index) => view.at(row, left + index)).filter(
    (one) => one,
  )
  return held.length > 1 && held.every((one) => one?.kind === 'text' && bareUnit(one.text) !== undefined)
}
