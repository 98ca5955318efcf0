import type { Area } from '../../host/address.js'

/** The corner a selection grows from and the corner that moves; counted from 1. */
export interface Cursor {
  anchor: { row: number; column: number }
  head: { row: number; column: number }
}

export const areaOf = ({ anchor, head }: Cursor): Area => ({
  top: Math.min(anchor.row, head.row),
  left: Math.min(anchor.column, head.column),
  bottom: Math.max(anchor.row, head.row),
  right: Math.max(anchor.column, head.column),
})

const STEPS: Record<string, readonly [rows: number, columns: number]> = {
  ArrowUp: [-1, 0],
  ArrowDown: [1, 0],
  ArrowLeft: [0, -1],
  ArrowRight: [0, 1],
  PageUp: [-15, 0],
  PageDown: [15, 0],
}

/** Where a key moves the cursor; undefined for keys that do not move it. */
export function moved(
  cursor: Cursor,
  key: string,
  shift: boolean,
  ends: { rows: number; columns: number },
): Cursor | undefined {
  const step =
    STEPS[key] ?? (key === 'Home' ? [0, -ends.columns] : key === 'End' ? [0, ends.columns] : undefined)
  if (!step) return undefined
  const within = (value: number, last: number): number => Math.min(Math.max(value, 1), last)
  const head = {
    row: within(cursor.head.row + (step[0] ?? 0), ends.rows),
    column: within(cursor.head.column + (step[1] ?? 0), ends.columns),
  }
  return shift ? { anchor: cursor.anchor, head } : { anchor: head, head }
}
