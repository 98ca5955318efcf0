import type { Cell, Sheet } from '../../log/grid/grid.js'

/** The content of a cell of a sheet, counted from 1. */
export const contentAt = (sheet: Sheet | undefined, row: number, column: number): Cell['value'] | undefined =>
  sheet?.at(row - 1, column - 1)?.value

export const textAt = (sheet: Sheet | undefined, row: number, column: number): string =>
  String(contentAt(sheet, row, column) ?? '').trim()

/** A number of a cell; undefined where it holds none. */
export function numberAt(sheet: Sheet | undefined, row: number, column: number): number | undefined {
  const content = contentAt(sheet, row, column)
  return typeof content === 'number' ? content : undefined
}
