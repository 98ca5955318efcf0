import { type Area, intersection, parseArea } from '../../host/address.js'
import type { CellSheet } from '../../host/cell-sheet.js'
import type { CellUse } from '../../host/host.js'

export const ROW_HEIGHT_PX = 24
export const HEAD_WIDTH_PX = 46
const NARROWEST_PX = 64
const WIDEST_PX = 190
const LETTER_PX = 7

/** Where columns begin: `starts[i]` is the left edge of column i (from 0), the last entry the right edge of all. */
export interface Measures {
  rows: number
  columns: number
  starts: readonly number[]
}

/** Room for the sheet and a few blank rows and columns; widths follow the texts of the first rows. */
export function measure(sheet: CellSheet, textAt: (row: number, column: number) => string): Measures {
  const rows = Math.max(sheet.rows + 12, 30)
  const columns = Math.max(sheet.columns + 2, 8)
  const starts = [0]
  for (let column = 0; column < columns; column++) {
    let letters = 0
    for (let row = 0; row < Math.min(sheet.rows, 60); row++) {
      const merge = sheet.mergeAt(row, column)
      if (!merge || merge.left === merge.right) letters = Math.max(letters, textAt(row, column).length)
    }
    const width = Math.min(WIDEST_PX, Math.max(NARROWEST_PX, letters * LETTER_PX + 12))
    starts.push((starts[column] ?? 0) + width)
  }
  return { rows, columns, starts }
}

/** Width of columns, from the first to the last of them. */
export const widthOf = (starts: readonly number[], first: number, last = first): number =>
  (starts[last + 1] ?? starts.at(-1) ?? 0) - (starts[first] ?? 0)

/** First and last index whose span [start, end) meets the window, for spans given by their edges. */
export function visible(
  edges: readonly number[],
  from_px: number,
  to_px: number,
): [first: number, last: number] {
  const first = Math.max(0, edges.findIndex((edge) => edge > from_px) - 1)
  const after = edges.findIndex((edge) => edge >= to_px)
  return [first, after < 0 ? edges.length - 2 : Math.max(first, after - 1)]
}

export type PlacedUse = CellUse & { area: Area }

/** The uses drawn over one sheet, with their places. */
export const usesOn = (uses: readonly CellUse[], sheet: string): PlacedUse[] =>
  uses.flatMap((use) => {
    const area = parseArea(use.reference)
    return area && (area.sheet === undefined || area.sheet === sheet) ? [{ ...use, area }] : []
  })

/** What a cell is used as; of two, what it is used for rather than that it is left out. */
export function useOn(uses: readonly PlacedUse[], here: Area): PlacedUse | undefined {
  const found = uses.filter(({ area }) => intersection(area, here))
  return found.find(({ kind }) => kind !== 'left-out') ?? found[0]
}
