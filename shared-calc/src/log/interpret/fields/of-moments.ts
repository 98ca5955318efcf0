import type { View } from '../grid/view.js'
import { momentsAbove } from '../words/moments.js'
import type { FoundField } from './found-field.js'

/** Values side by side below the headings of their moments: so many at most. */
const MOST = 4

/** "Inside °C | 19.6 | 20.4 | 20" below "before | after | mean": the mean of the test, as written or of the two. */
export function ofMoments(field: FoundField): FoundField {
  const { view, row, column, content } = field
  if (content.kind !== 'number') return field
  const columns = [column, ...following(view, row, column)]
  const moments = momentsAbove(view, row, columns)
  const at = (moment: 'before' | 'after' | 'mean') => columns[moments.indexOf(moment)]
  const [before, after, mean] = [at('before'), at('after'), at('mean')]
  const written = mean === undefined ? undefined : view.at(row, mean)
  if (mean !== undefined && written?.kind === 'number') {
    const also = columns.filter((one) => one !== mean).map((one) => view.address(row, one))
    return { ...field, column: mean, cell: view.address(row, mean), content: written, also }
  }
  const [first, last] = [before, after].map((one) => (one === undefined ? undefined : view.number(row, one)))
  if (before === undefined || after === undefined || first === undefined || last === undefined) return field
  const value = Number(((first + last) / 2).toPrecision(12))
  return {
    ...field,
    column: before,
    cell: view.address(row, before),
    content: { ...content, written: { ...content.written, value } },
    meanWith: [view.address(row, after)],
    also: [view.address(row, after)],
  }
}

/** Columns of the numbers right behind one. */
function following(view: View, row: number, column: number): number[] {
  const found: number[] = []
  for (let at = column + 1; found.length < MOST && view.number(row, at) !== undefined; at++) found.push(at)
  return found
}
