import { bareUnit } from '../../cells/stated-unit.js'
import type { Content } from '../grid/cell-content.js'
import type { View } from '../grid/view.js'
import { isPlaceholder, readLabel, says } from '../words/label.js'
import { directionWord, type KnownColumn, type Segment } from './columns.js'
import { isFlowLike, isPressureLike } from './heads.js'
import type { NoteBetween } from './notes-between.js'
import { labelledAsField } from './row-labels.js'
import type { TableRow } from './table-row.js'

/** A remark typed over the pressure, with a flow beside the pressure that follows it. */
export const labelsAreNotes = (view: View, row: number, carriers: readonly KnownColumn[]): boolean =>
  carriers.length > 0 &&
  carriers.every(({ at }) => !view.at(row, at)) &&
  isFlow(view.at(row + 1, (carriers[0] as KnownColumn).at))

const isFlow = (content: Content | undefined): boolean =>
  content?.kind === 'number' || (content?.kind === 'struck' && content.number)

/** Lines left blank between a remark and the next reading at most. */
const BLANKS_BEHIND = 2

/** "Door opened" in a line of its own right below a reading, and the next reading after a blank line: nothing but a remark. */
export function isNoteBeforeGap(
  view: View,
  row: number,
  {
    pressure,
    carriers,
    rows,
  }: { pressure: KnownColumn; carriers: readonly KnownColumn[]; rows: readonly TableRow[] },
): boolean {
  const text = view.text(row, pressure.at)
  const last = rows.at(-1)
  if (text === undefined || last?.kind !== 'reading' || last.row !== row - 1) return false
  const label = readLabel(text)
  const names =
    label.unit || directionWord(text) || NAMING.some((one) => says(label, one)) || says(label, 'test')
  const isHeld = (at: number, line: number) => view.at(line, at) !== undefined
  if (names || labelledAsField([{ text, cell: '' }]) || carriers.some(({ at }) => isHeld(at, row)))
    return false
  const used = [pressure, ...carriers]
  let next = row + 1
  while (next <= row + BLANKS_BEHIND && used.every(({ at }) => !isHeld(at, next))) next++
  const value = view.number(next, pressure.at)
  return (
    value !== undefined &&
    Math.sign(value) === Math.sign(last.pressure.value) &&
    carriers.every(({ at }) => isFlow(view.at(next, at)))
  )
}

/** "Door opened" in the place of a pressure, right between two readings: what stands below the last is a result. */
export const isWordForPressure = (
  text: string,
  row: number,
  rows: readonly TableRow[],
  view: View,
  pressure: KnownColumn,
): boolean =>
  rows.at(-1)?.row === row - 1 &&
  rows.at(-1)?.kind === 'reading' &&
  view.number(row + 1, pressure.at) !== undefined &&
  directionWord(text) === undefined &&
  !labelledAsField([{ text, cell: '' }])

/** "Wind picking up" in the column of flows, between two readings. */
export function noteIn(
  view: View,
  row: number,
  pressure: KnownColumn,
  carriers: readonly KnownColumn[],
): NoteBetween | undefined {
  const [first] = carriers
  const [note, ...others] = carriers.flatMap(({ at }) => {
    const text = view.text(row, at)
    return text === undefined ? [] : [{ row, text, cell: view.address(row, at) }]
  })
  if (!first || !note || carriers.some(({ at }) => view.number(row, at) !== undefined)) return undefined
  if ([pressure, first].some(({ at }) => view.number(row + 1, at) === undefined)) return undefined
  const isHeading = [note, ...others].some(({ text }) => {
    const label = readLabel(text)
    const heads = label.unit !== undefined || says(label, 'flow') || says(label, 'zero')
    return heads || directionWord(text) !== undefined
  })
  return isHeading ? undefined : note
}

/** "Off", "covered" below "Fan". */
export const saysStopped = (text: string | undefined): boolean => {
  const label = readLabel(text ?? '')
  // Norwegian "av" is "of" elsewhere.
  return (
    label.tokens.length <= 2 && (says(label, 'stopped') || says(label, 'covered') || label.tokens[0] === 'av')
  )
}

/** "Closed", "blanked off" in place of a flow: the fan was covered. */
export const saysCovered = (text: string): boolean => {
  const label = readLabel(text)
  return label.tokens.length <= 3 && says(label, 'covered')
}

/** Whether the next line is a reading: a word in one line of a table does not end it. */
export const goesOn = (view: View, row: number, used: readonly KnownColumn[]): boolean =>
  used.every(({ at }) => view.number(row + 1, at) !== undefined)

/** What heads columns and lines. */
const NAMING = ['pressure', 'flow', 'zero', 'before', 'after', 'average'] as const

/** A short word that neither heads a column nor names a run. */
export const saysNothing = (content: Content | undefined): boolean => {
  if (content?.kind !== 'text' || content.text.length > 12) return false
  const label = readLabel(content.text)
  return (
    !label.unit &&
    !NAMING.some((concept) => says(label, concept)) &&
    directionWord(content.text) === undefined
  )
}

/** Whether a line of the headings, of names or of units, stands over a column once more. */
export const isHeadingAgain = ({ view, head }: Segment, row: number, { at }: KnownColumn): boolean => {
  const text = view.text(row, at)
  if (text === undefined) return false
  for (let heading = head.first - 1; heading >= head.top; heading--)
    if (text === view.text(heading, at)) return true
  return false
}

/** Whether words stand where another block of the same headings has its numbers: the tables have ended. */
export function isRemarkBeside({ view, head, columns }: Segment, row: number): boolean {
  const others = head.columns.filter(
    ({ at, label, unit }) =>
      !columns.some((own) => own.at === at) && (isPressureLike(label, unit) || isFlowLike(label, unit)),
  )
  const held = others.map(({ at }) => view.at(row, at))
  return (
    held.some((one) => one?.kind === 'text' && !isPlaceholder(one.text) && !bareUnit(one.text)) &&
    !held.some((one) => one?.kind === 'number')
  )
}
