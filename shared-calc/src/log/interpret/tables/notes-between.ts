import { rowReasons } from '../../../catalogue/findings/log/runs.js'
import { readLabel, says } from '../words/label.js'
import type { LeftOut, TableRow } from './table-row.js'

/** A remark in a line of its own, among the readings. */
export interface NoteBetween {
  readonly row: number
  readonly cell: string
  readonly text: string
}

/**
 * Remarks between readings are named. Where one says that the run was begun again, or the pressures begin again below it, nobody knows
 * whether the readings above it count.
 */
export function withNotes(
  rows: readonly TableRow[],
  notes: readonly NoteBetween[],
  leftOut: LeftOut[],
): TableRow[] {
  let judged = [...rows]
  for (const { row, cell, text } of notes) {
    const isAbove = (one: TableRow) => one.kind === 'reading' && one.row < row
    const above = judged.filter(isAbove)
    const below = judged.filter((one) => one.kind === 'reading' && one.row > row)
    if (above.length === 0 || below.length === 0) continue
    leftOut.push({ cell, why: text, isNote: true })
    const said = readLabel(text)
    const isBegunAgain = OF_ANOTHER_START.some((concept) => says(said, concept)) || beginsAgain(above, below)
    if (!isBegunAgain) continue
    const doubt = { kind: 'remark', why: rowReasons.noteBelow(text, cell) } as const
    judged = judged.map((one) => (isAbove(one) && !one.doubt ? { ...one, doubt } : one))
  }
  return judged
}

const OF_ANOTHER_START = ['restarted', 'repeated', 'leftOut'] as const

/** Pressures that go one way, but for readings taken twice: those in no order go back and forth all the time. */
function isInOrder(rows: readonly TableRow[]): boolean {
  const sizes = rows.map(({ pressure }) => Math.abs(pressure.value))
  const way = Math.sign((sizes.at(-1) ?? 0) - (sizes[0] ?? 0))
  return sizes.slice(1).every((size, index) => way * (size - (sizes[index] ?? 0)) > -SAME_PA)
}
/** Readings of one step lie this near to one another, Pa; common practice, no source. */
const SAME_PA = 2

/** Pressures that went one way and then are back where they began. */
function beginsAgain(above: readonly TableRow[], below: readonly TableRow[]): boolean {
  const size = (one: TableRow | undefined) => one?.pressure.value ?? 0
  const [first, last, next] = [size(above[0]), size(above.at(-1)), size(below[0])]
  return (
    above.length > 1 &&
    isInOrder(above) &&
    Math.sign(first) === Math.sign(next) &&
    Math.abs(next - first) < Math.abs(last - first) / 2
  )
}
