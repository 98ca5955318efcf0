import type { Block } from '../grid/address.js'

interface Placed {
  readonly sheet: string
  readonly block: Block
}

export interface Aligned<T> {
  readonly lists: T[]
  /** What of each list, in order, has no cell of the others beside it. */
  readonly beyond: Block[][]
}

type Start = 'top' | 'left'
type End = 'bottom' | 'right'

/**
 * Lists beside each other are paired row by row (those below each other column by column), so that a heading more or less moves
 * nothing: each is cut to what all of them cover. Others are paired place by place.
 */
export function aligned<T extends Placed>(lists: readonly T[]): Aligned<T> {
  const [first] = lists
  const oneSheet = lists.every(({ sheet }) => sheet.toLowerCase() === first?.sheet.toLowerCase())
  if (oneSheet && lists.every(({ block }) => block.left === block.right) && overlap(lists, 'top', 'bottom'))
    return cut(lists, 'top', 'bottom')
  if (oneSheet && lists.every(({ block }) => block.top === block.bottom) && overlap(lists, 'left', 'right'))
    return cut(lists, 'left', 'right')
  return { lists: [...lists], beyond: lists.map(() => []) }
}

const overlap = (lists: readonly Placed[], start: Start, end: End): boolean =>
  lists.every(({ block }) => lists.every((other) => block[start] <= other.block[end]))

function cut<T extends Placed>(lists: readonly T[], start: Start, end: End): Aligned<T> {
  const from = Math.max(...lists.map(({ block }) => block[start]))
  const to = Math.min(...lists.map(({ block }) => block[end]))
  return {
    lists: lists.map((list) => ({ ...list, block: { ...list.block, [start]: from, [end]: to } })),
    beyond: lists.map(({ block }) => [
      ...(block[start] < from ? [{ ...block, [end]: from - 1 }] : []),
      ...(block[end] > to ? [{ ...block, [start]: to + 1 }] : []),
    ]),
  }
}
