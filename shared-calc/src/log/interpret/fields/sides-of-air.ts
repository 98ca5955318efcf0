import { findUnit } from '../../cells/units.js'
import type { View } from '../grid/view.js'
import { type Label, readLabel, says } from '../words/label.js'
import { sideOf } from './classify.js'
import { type FoundField, made } from './found-field.js'

/** "Temperature | 20.3 | 5.2" below the headings "inside" and "outside". */
export function bySide(
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

/** "Indoor | 20.5 | °C | 45 | % RH": the humidity behind the temperature of the same air. */
export function humidityBehind(
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

/** "Temp | 22 | °C in | 9.9 | °C out": the side behind the unit of the value in front of it. */
export function sideBehind(view: View, row: number, column: number, text: string): FoundField | undefined {
  const content = view.at(row, column - 1)
  const [, unit, words] = /^(\S+)\s+(\p{L}[\p{L} .]*)$/u.exec(text.trim()) ?? []
  const known = content?.kind === 'number' && unit ? findUnit(unit) : undefined
  if (known?.kind !== 'temperature' || !sideOf(readLabel(words ?? ''))) return undefined
  const label = readLabel(`temperature ${words}`)
  return made(view, { row, column: column - 1 }, { row, column }, label, content, known)
}
