import { bareUnit } from '../../cells/stated-unit.js'
import { type FoundField, made } from './found-field.js'

/** Columns of a test beside others. */
interface Columns {
  readonly left: number
  readonly right: number
}

/**
 * "Date | 17 February | … | 24 June" over two tests side by side: one label, and behind it a value over the columns of each. What was
 * found is the first of them; these are those over the columns of one test.
 */
export function overTest(
  fields: readonly FoundField[],
  taken: readonly FoundField[],
  { left, right }: Columns,
): FoundField[] {
  const known = new Set(taken.flatMap(({ cell, labelCell, also = [] }) => [cell, labelCell, ...also]))
  return fields.flatMap((field) => {
    const { view, row, column, content, label } = field
    if (view.turned || column >= left || (content.kind !== 'number' && content.kind !== 'date')) return []
    for (let at = left; at <= right; at++) {
      const held = view.at(row, at)
      if (!held) continue
      const isNext = held.kind === content.kind && !known.has(view.address(row, at))
      if (!isNext || isLabelled(field, at)) return []
      const unit = bareUnit(view.text(row, at + 1) ?? '') ?? field.unit
      const own = made(view, { row, column: at }, { row, column }, label, held, unit)
      return own?.name === field.name ? [{ ...own, labelCell: field.labelCell }] : []
    }
    return []
  })
}

/** The nearest text in front of a value, which is no unit, stands behind the first value: the label is another. */
function isLabelled({ view, row, column }: FoundField, at: number): boolean {
  for (let before = at - 1; before > column; before--) {
    const text = view.text(row, before)
    if (text !== undefined) return bareUnit(text) === undefined
  }
  return false
}
