import { bareUnit } from '../../cells/stated-unit.js'
import type { View } from '../grid/view.js'
import type { Stopped } from '../not-searched.js'
import { readLabel, says } from '../words/label.js'
import { MOST_LABELS } from '../zero-flow/find-labelled.js'
import { areasBelowTitle } from './areas-below-title.js'
import type { FieldName } from './classify.js'
import { type FoundField, made } from './found-field.js'
import { fieldsInText } from './in-text.js'
import { withNext } from './next-size.js'
import { ofMoments } from './of-moments.js'
import { severalTemperatures } from './several-temperatures.js'
import { bySide, humidityBehind, sideBehind } from './sides-of-air.js'
import { toTheRight } from './value-beside.js'
import { lineBelow, totalsOfColumns } from './values-below.js'

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
      if (text === undefined || text.length > longest(text) || isTaken(row, column)) continue
      if (used.has(view.address(row, column)) || isUnitOfValue(view, row, column, text)) continue
      if (++looked > MOST_LABELS) {
        stopped(view.address(row, column))
        return found
      }
      const behind = sideBehind(view, row, column, text)
      if (behind) {
        add(behind)
        continue
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
      for (const field of areasBelowTitle(view, row, column, label)) {
        add(field)
        for (const cell of field.also ?? []) used.add(cell)
      }
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
  found.push(...airInRemarks(view, found))
  if (!found.some(({ name }) => name === 'barometer')) add(airPressure(view, isTaken, used))
  return found
}

/** What a remark may say of the air. */
const OF_AIR: readonly FieldName[] = ['indoorTemperature', 'outdoorTemperature', 'barometer']

/** "Remarks | Light breeze, inside 21 °C, outside 8 °C": what is said of the air there, where no cell of its own does. */
function airInRemarks(view: View, found: readonly FoundField[]): FoundField[] {
  const names = new Set(found.map(({ name }) => name))
  return found.flatMap(({ name, row, column, content }) => {
    if (name !== 'notes' || content.kind !== 'text' || says(readLabel(content.text), 'former')) return []
    return fieldsInText(view, row, column, content.text).filter(
      (field) => OF_AIR.includes(field.name) && !names.has(field.name),
    )
  })
}

/** A whole form may stand in one cell, line by line. */
const longest = (text: string): number => (text.includes('\n') ? 800 : 160)

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
      const text = view.text(row, column - 1) ?? ''
      const unit = content.written.unit ?? bareUnit(view.text(row, column + 1) ?? '') ?? bareUnit(text)
      const field =
        unit?.kind === 'pressure' && made(view, at, at, readLabel(`${text} ${unit.unit}`), content, unit)
      if (field && field.name === 'barometer') found.push(field)
    }
  return found.length === 1 ? found[0] : undefined
}

/** A unit alone; "in" in front of a number is the word, not the inch. */
const isUnitOfValue = (view: View, row: number, column: number, text: string): boolean =>
  bareUnit(text) !== undefined &&
  !(
    /^in:?$/i.test(text.trim()) &&
    view.number(row, column + 1) !== undefined &&
    view.number(row, column - 1) === undefined
  )
