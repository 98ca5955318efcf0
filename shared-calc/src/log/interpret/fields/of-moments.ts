import type { Content } from '../grid/cell-content.js'
import type { View } from '../grid/view.js'
import { directionIn, readLabel, says } from '../words/label.js'
import { momentsAbove } from '../words/moments.js'
import type { FoundField } from './found-field.js'

/** Values side by side below headings: so many at most. */
const MOST = 4
/** Headings of directions stand so many rows above at most. */
const ROWS = 8

/** Values of a field that stand side by side for several moments, or for both directions: the mean of the test, as written or of the two. */
export function ofMoments(field: FoundField): FoundField {
  const { view, row, column, content } = field
  if (content.kind !== 'number') return field
  const columns = [column, ...following(view, row, column)]
  const named = momentsAbove(view, row, columns)
  const moments = named.filter((one) => one === 'before').length === 1 ? named : []
  const at = (moment: 'before' | 'after' | 'mean') => columns[moments.indexOf(moment)]
  const mean = at('mean')
  const written = mean === undefined ? undefined : view.at(row, mean)
  if (mean !== undefined && written?.kind === 'number') {
    const also = columns.filter((one) => one !== mean).map((one) => view.address(row, one))
    return { ...field, column: mean, cell: view.address(row, mean), content: written, also }
  }
  if (moments.length > 0) return meanOf(field, [at('before'), at('after')])
  // "Inside start / end (°C) | 20.1 | 20.9"
  const isPair = columns.length === 2 && says(field.label, 'before') && says(field.label, 'after')
  return meanOf(field, isPair ? columns : ofDirections(view, row, column))
}

/**
 * A field with the mean of two values.
 * @param content - what the first of them is written as
 * @param meanWith - cells of the other
 */
export function withMean(
  field: FoundField,
  content: Extract<Content, { kind: 'number' }>,
  first: number,
  second: number,
  meanWith: readonly string[],
): FoundField {
  return withValue(field, content, Number(((first + second) / 2).toPrecision(12)), meanWith)
}

/** A field with a mean worked out already, of what stands in its cell and in others. */
export const withValue = (
  field: FoundField,
  content: Extract<Content, { kind: 'number' }>,
  value: number,
  meanWith: readonly string[],
): FoundField => ({ ...field, content: { ...content, written: { ...content.written, value } }, meanWith })

function meanOf(field: FoundField, [one, other]: readonly (number | undefined)[]): FoundField {
  const { view, row, content } = field
  if (one === undefined || other === undefined || content.kind !== 'number') return field
  const [first, second] = [view.number(row, one), view.number(row, other)]
  if (first === undefined || second === undefined) return field
  const cells = { column: one, cell: view.address(row, one), also: [view.address(row, other)] }
  if (first === second) return { ...field, ...cells }
  return withMean({ ...field, ...cells }, content, first, second, cells.also)
}

/** "T in °C | 21 | 22" below "depressurisation | pressurisation", with or without a column between. */
function ofDirections(view: View, row: number, column: number): number[] {
  const next = [column + 1, column + 2].find((at) => view.number(row, at) !== undefined)
  if (next === undefined) return []
  for (let at = row - 1; at >= Math.max(0, row - ROWS); at--) {
    const [first, second] = [column, next].map((one) => directionIn(readLabel(view.text(at, one) ?? '')))
    if (first && second) return first === second ? [] : [column, next]
  }
  return []
}

/** Columns of the numbers right behind one. */
function following(view: View, row: number, column: number): number[] {
  const found: number[] = []
  for (let at = column + 1; found.length < MOST && view.number(row, at) !== undefined; at++) found.push(at)
  return found
}
