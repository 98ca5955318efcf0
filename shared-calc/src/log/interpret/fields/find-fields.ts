import { bareUnit } from '../../cells/stated-unit.js'
import { findUnit, type KnownUnit } from '../../cells/units.js'
import type { View } from '../grid/view.js'
import type { Stopped } from '../not-searched.js'
import { isPlaceholder, type Label, readLabel, says } from '../words/label.js'
import { MOST_LABELS } from '../zero-flow/find-labelled.js'
import { classify, sideOf } from './classify.js'
import { type FoundField, made } from './found-field.js'
import { fieldsInText } from './in-text.js'
import { withNext } from './next-size.js'
import { ofMoments } from './of-moments.js'
import { severalTemperatures } from './several-temperatures.js'

const BLANKS = 6

/** Every label of a sheet with a value beside it, below it or in its own cell. */
export function findFields(
  view: View,
  isTaken: (row: number, column: number) => boolean,
  stopped: Stopped,
): FoundField[] {
  const found: FoundField[] = []
  const used = new Set<string>()
  let looked = 0
  const add = (field: FoundField | undefined): boolean => {
    if (!field || used.has(field.cell)) return false
    found.push(field)
    if (field.cell !== field.labelCell) used.add(field.cell)
    return true
  }
  for (let row = 0; row < view.rows; row++)
    for (let column = 0; column < view.columns; column++) {
      const text = view.text(row, column)
      if (text === undefined || text.length > 160 || isTaken(row, column)) continue
      if (used.has(view.address(row, column)) || isUnitOfValue(view, row, column, text)) continue
      if (++looked > MOST_LABELS) {
        stopped(view.address(row, column))
        return found
      }
      if (says(readLabel(text), 'former')) {
        column = endOfLine(view, row, column)
        continue
      }
      const told = fieldsInText(view, row, column, text)
      for (const field of told) add(field)
      if (told.length > 0) continue
      if (text.length > 90) continue
      const label = readLabel(text)
      const sides = bySide(view, row, column, label, isTaken)
      for (const field of sides) add(field)
      if (sides.length > 0) continue
      const beside = toTheRight(view, row, column, label, isTaken)
      const field = beside && ofMoments(beside)
      const several = field?.also ? [] : severalTemperatures(view, row, column, isTaken)
      for (const { cell } of several) used.add(cell)
      found.push(...several)
      if (several.length > 0) continue
      for (const one of field ? withNext(field, isTaken) : []) add(one)
      if (field && (field.name === 'indoorTemperature' || field.name === 'outdoorTemperature'))
        add(humidityBehind(field, isTaken))
    }
  for (let row = 0; row < view.rows; row++)
    for (const field of lineBelow(view, row, isTaken, used)) add(field)
  for (const field of totalsOfColumns(view, isTaken, used)) add(field)
  if (!found.some(({ name }) => name === 'barometer')) add(airPressure(view, isTaken, used))
  return found
}

/** "Previous test | 14 February 2025 | volume | 410": the last cell of a line, before two blanks. */
function endOfLine(view: View, row: number, column: number): number {
  let end = column
  while (view.at(row, end + 1) || view.at(row, end + 2)) end++
  return end
}

/** A number that by its unit and size can only be the pressure of the air, whatever word is in front of it. */
function airPressure(
  view: View,
  isTaken: (row: number, column: number) => boolean,
  used: ReadonlySet<string>,
): FoundField | undefined {
  const found: FoundField[] = []
  for (let row = 0; row < Math.min(view.rows, 80); row++)
    for (let column = 0; column < Math.min(view.columns, 20); column++) {
      const content = view.at(row, column)
      if (content?.kind !== 'number' || isTaken(row, column) || used.has(view.address(row, column))) continue
      const at = { row, column }
      const unit = content.written.unit ?? bareUnit(view.text(row, column + 1) ?? '')
      const text = view.text(row, column - 1) ?? ''
      const field =
        unit?.kind === 'pressure' && made(view, at, at, readLabel(`${text} ${unit.unit}`), content, unit)
      if (field && field.name === 'barometer') found.push(field)
    }
  return found.length === 1 ? found[0] : undefined
}

/** Four texts or more side by side with values below: labels, of which none is the value of another. */
function isAmongLabels(view: View, row: number, column: number): boolean {
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

/** Below headings a line with nothing but their units, of which names and dates have none. */
function isLineOfUnits(view: View, row: number, left: number, end: number): boolean {
  const held = Array.from({ length: end - left }, (_, index) => view.at(row, left + index)).filter(
    (one) => one,
  )
  return held.length > 1 && held.every((one) => one?.kind === 'text' && bareUnit(one.text) !== undefined)
}

/** A unit alone; "in" in front of a number is the word, not the inch. */
const isUnitOfValue = (view: View, row: number, column: number, text: string): boolean =>
  bareUnit(text) !== undefined &&
  !(
    /^in:?$/i.test(text.trim()) &&
    view.number(row, column + 1) !== undefined &&
    view.number(row, column - 1) === undefined
  )

function toTheRight(
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
    if (content.kind === 'text' && bareUnit(content.text)) {
      // "Volume | m³ | 412.6": the unit stands before the value.
      const unit = bareUnit(content.text)
      const next = view.at(row, at + 1)
      if (next?.kind === 'number')
        return made(view, { row, column: at + 1 }, { row, column }, label, next, unit)
      return undefined
    }
    const beside = view.text(row, view.right(row, at) + 1)
    const unit = beside === undefined ? undefined : bareUnit(beside)
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
  const beside = view.text(row + 1, column + 2)
  const unit = beside === undefined ? undefined : bareUnit(beside)
  return made(view, { row: row + 1, column: column + 1 }, { row, column }, label, content, unit)
}

/** "Temperature | 20.3 | 5.2" below the headings "inside" and "outside". */
function bySide(
  view: View,
  row: number,
  column: number,
  label: Label,
  isTaken: (row: number, column: number) => boolean,
): FoundField[] {
  if (!(says(label, 'temperature') || says(label, 'humidity')) || sideOf(label)) return []
  const found: FoundField[] = []
  for (let at = column + 1; at <= column + 4 && !isTaken(row, at); at++) {
    const content = view.at(row, at)
    const heading = content?.kind === 'number' ? sideHeading(view, row, at) : undefined
    if (!heading) continue
    const joined = readLabel(`${heading} ${label.text}`)
    const field = made(view, { row, column: at }, { row, column }, joined, content, undefined)
    if (field) found.push(field)
  }
  return found
}

function sideHeading(view: View, row: number, column: number): string | undefined {
  for (let at = row - 1; at >= Math.max(0, row - 4); at--) {
    const text = view.text(at, column)
    if (text !== undefined) return text.length <= 40 && sideOf(readLabel(text)) ? text : undefined
  }
  return undefined
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

/** "Indoor | 20.5 | °C | 45 | % RH": the humidity behind the temperature of the same air. */
function humidityBehind(
  { view, row, column, label, labelCell }: FoundField,
  isTaken: (row: number, column: number) => boolean,
): FoundField | undefined {
  for (let at = column + 1; at <= column + 3; at++) {
    const content = view.at(row, at)
    if (content?.kind !== 'number') continue
    const words = view.text(row, at + 1) ?? ''
    const unit = content.written.unit ?? findUnit(/%/.test(words) ? '%' : words)
    if (unit?.kind !== 'fraction' || isTaken(row, at)) return undefined
    const side = sideOf(label)
    const own = side && readLabel(`humidity ${side}`)
    const field = own && made(view, { row, column: at }, { row, column: at }, own, content, unit)
    return field && { ...field, label, labelCell }
  }
  return undefined
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

/** A line of labels with one line of values below. */
function lineBelow(
  view: View,
  row: number,
  isTaken: (row: number, column: number) => boolean,
  used: ReadonlySet<string>,
): FoundField[] {
  const found: FoundField[] = []
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
  return numeric.length >= 2
    ? found
    : numeric.filter(
        ({ name, view: own, row: at, column }) => name !== 'area' && own.text(at, column + 1) === undefined,
      )
}

/** A blank in a line of units. */
const isUnderUnits = (view: View, row: number, column: number): boolean => {
  let [left, end] = [column, column]
  while (view.text(row - 1, left - 1) !== undefined) left--
  while (view.text(row - 1, end) !== undefined) end++
  return isLineOfUnits(view, row, left, end)
}

/** "Total" in front of a number whose column is headed as a volume or an area. */
function totalsOfColumns(
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

/** The unit that stands over a column of numbers, alone or in its heading. */
function unitOver(view: View, row: number, column: number): KnownUnit | undefined {
  for (let at = row - 1; at >= Math.max(0, row - 60); at--) {
    const text = view.text(at, column)
    const unit = text === undefined ? undefined : (bareUnit(text) ?? readLabel(text).unit)
    if (unit || (text !== undefined && !isPlaceholder(text))) return unit
  }
  return undefined
}
