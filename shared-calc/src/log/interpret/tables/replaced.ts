import { cellText } from '../../../catalogue/findings/log/cells.js'
import type { KnownColumn, Segment } from './columns.js'
import type { Figure } from './table-row.js'

/** A correction differs from what it corrects by less than this factor. */
const APART = 2

/**
 * The flows of a row whose struck-through ones are each followed by the number that replaces them, in a column that has a number in few
 * other rows. Undefined where one is not.
 */
export function replacedFlows(
  { view, head, columns }: Segment,
  row: number,
  carriers: readonly KnownColumn[],
): Figure[] | undefined {
  const flows = carriers.map(({ at, numbers }): Figure | undefined => {
    const [content, next] = [view.at(row, at), view.at(row, at + 1)]
    if (content?.kind === 'number') return { ...content.written, cell: view.address(row, at) }
    if (content?.kind !== 'struck' || !content.number || next?.kind !== 'number') return undefined
    const others = Array.from({ length: numbers + 1 }, (_, index) => head.first + index).filter(
      (one) => one !== row && view.number(one, at + 1) !== undefined,
    )
    const { value } = next.written
    const share = value / Number(content.text)
    const isOfColumn = columns.some((one) => one.at === at + 1 && OF_READINGS.includes(one.role))
    if (isOfColumn || others.length > numbers / 4 || !(share < APART && share > 1 / APART)) return undefined
    const [struck, cell] = [view.address(row, at), view.address(row, at + 1)]
    const remark = cellText('log-struck-through/replaced', { struck, value })
    return { ...next.written, cell, remarks: [...(next.written.remarks ?? []), remark] }
  })
  return flows.every((one): one is Figure => one !== undefined) ? flows : undefined
}

const OF_READINGS: readonly string[] = ['pressure', 'flow', 'device']
