import type { View } from '../grid/view.js'
import { type Label, readLabel, says } from '../words/label.js'
import { type FoundField, made } from './found-field.js'

/** A list of areas has so many lines at least. */
const FEWEST = 2
/** Parts and their sum, rounded to one decimal each. */
const ROUNDED = 0.002

/**
 * "Envelope areas in m²" over "Walls | 143.3", "Roof | 91.5", "Sum | 315": the sum is the envelope area. Without a sum the areas are parts,
 * of which no whole is made.
 */
export function areasBelowTitle(view: View, row: number, column: number, title: Label): FoundField[] {
  return isTitle(title) && !view.at(row, column + 1) ? listBelow(view, row, column, title) : []
}

const isTitle = (label: Label): boolean =>
  label.unit?.kind === 'area' && says(label, 'envelope') && !says(label, 'floor')

function listBelow(view: View, row: number, column: number, title: Label): FoundField[] {
  const lines: FoundField[] = []
  for (let at = row + 1; at < view.rows; at++) {
    const [name, content] = [view.text(at, column), view.at(at, column + 1)]
    if (name === undefined || content?.kind !== 'number') break
    const label = readLabel(`${name} (${title.text})`)
    const field = made(view, { row: at, column: column + 1 }, { row: at, column }, title, content, title.unit)
    if (field?.name !== 'envelopeArea') break
    lines.push({ ...field, label })
  }
  if (lines.length < FEWEST) return []
  const last = lines.at(-1) as FoundField
  const parts = lines.slice(0, -1)
  const sum = parts.reduce((whole, one) => whole + areaIn(one), 0)
  const isSum =
    says(readLabel(view.text(last.row, column) ?? ''), 'total') || Math.abs(areaIn(last) / sum - 1) < ROUNDED
  return isSum
    ? [{ ...last, also: parts.map(({ cell }) => cell) }]
    : lines.map((line) => ({ ...line, part: true }))
}

const areaIn = ({ content }: FoundField): number => (content.kind === 'number' ? content.written.value : 0)
