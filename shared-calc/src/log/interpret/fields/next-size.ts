import { readLabel, says } from '../words/label.js'
import { headingAbove } from '../zero-flow/headings.js'
import type { FieldName } from './classify.js'
import type { FoundField } from './found-field.js'

const SIZES: readonly FieldName[] = ['volume', 'envelopeArea', 'floorArea']

/** "net | gross" stands so many rows over the values at most. */
const ROWS = 6
/** Two areas of one building differ by less than this factor. */
const APART = 2

/**
 * A volume or area with a second one right beside it, as in a list with a column for each house or with one for net and one for gross:
 * never left out in silence.
 */
export function withNext(
  field: FoundField,
  isTaken: (row: number, column: number) => boolean,
): readonly FoundField[] {
  const { name, view, row, column, content } = field
  const next = view.at(row, column + 1)
  if (!SIZES.includes(name) || next?.kind !== 'number' || content.kind !== 'number') return [field]
  const [one, other] = [content.written.value, next.written.value]
  if (isTaken(row, column + 1) || one === other) return [field]
  const [own, beside] = [column, column + 1].map((at) => headingAbove(view, row, at, ROWS))
  const isOfKind = [own, beside].every((one) => says(one, 'net') || says(one, 'gross'))
  if (name !== 'volume' && !isOfKind && (beside || other > one * APART || other < one / APART)) return [field]
  const named = (heading: typeof own) =>
    isOfKind ? { label: readLabel(`${field.label.text} ${heading?.text}`) } : {}
  return [
    { ...field, ...named(own) },
    { ...field, ...named(beside), column: column + 1, cell: view.address(row, column + 1), content: next },
  ]
}
