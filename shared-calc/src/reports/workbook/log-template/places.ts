import { type Entry, LEFT, RIGHT, type Section } from './entries.js'

/** Columns of the sheet, from 1: a half is number or label, label, value, unit or remark; a narrow gap between the halves. */
export const HALVES = { left: 1, right: 6 } as const
export const COLUMN_WIDTHS = [5, 21, 17, 9, 2, 5, 21, 17, 9]
export const LAST_COLUMN = COLUMN_WIDTHS.length
export const FIRST_ROW = 4
/** Rows for zero-flow values, as many as the methods ask for. */
export const ZERO_FLOW_ROWS = 10

export type Half = keyof typeof HALVES

export interface PlacedEntry extends Entry {
  readonly row: number
  readonly half: Half
}

export interface Places {
  readonly headings: readonly { readonly row: number; readonly half: Half; readonly title: string }[]
  readonly entries: readonly PlacedEntry[]
  /** Row of the directions' names above the zero-flow values. */
  readonly zeroFlow: number
  /** Row of the headings of the readings; the first reading is below. */
  readonly readings: number
  readonly lastRow: number
}

/** Where everything of the form stands, for a number of readings in each direction. */
export function placesFor(readings: number): Places {
  const left = column(LEFT, 'left')
  const right = column(RIGHT, 'right')
  const zeroFlow = Math.max(left.next, right.next)
  const readingsAt = zeroFlow + 2 + ZERO_FLOW_ROWS + 2
  return {
    headings: [...left.headings, ...right.headings],
    entries: [...left.entries, ...right.entries],
    zeroFlow,
    readings: readingsAt,
    lastRow: readingsAt + readings + 2,
  }
}

function column(sections: readonly Section[], half: Half) {
  const headings: Places['headings'][number][] = []
  const entries: PlacedEntry[] = []
  let row = FIRST_ROW
  for (const section of sections) {
    headings.push({ row, half, title: section.title })
    for (const [index, entry] of section.entries.entries())
      entries.push({ ...entry, half, row: row + 1 + index })
    row += section.entries.length + 2
  }
  return { headings, entries, next: row }
}
