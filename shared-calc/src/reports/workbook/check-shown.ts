import type { Cell, Worksheet } from 'exceljs'
import { heads, nameRow, numberRow, textRow } from './check-rows.js'

/** Numbers on Summary are looked at by readers: what is far below the digits shown does not count. */
const UNSEEN = 100
const NAME_CHARACTERS = 60

/**
 * One row for everything Summary shows, as it was issued against what it shows now. Returns the last row.
 * @param limit - of the target, 0 where there is none: a margin is a small rest of it
 */
export function writeShownRows(sheet: Worksheet, summary: Worksheet, start: number, limit: number): number {
  heads(sheet, start, 'Shown on Summary')
  let row = start
  for (const { cell, value } of shownCells(summary)) {
    row += 1
    const address = `${summary.name}!${cell.$col$row}`
    if (typeof value === 'number')
      numberRow(sheet, row, value, address, Math.max(UNSEEN * Math.abs(value), limit))
    else textRow(sheet, row, value, address)
    nameRow(sheet, row, `${summary.name} ${cell.address}: ${nameOf(summary, cell)}`)
  }
  return row
}

/** Cells that show something; the remark on edits follows from the count on this sheet, and is left out. */
function shownCells(summary: Worksheet): { cell: Cell; value: string | number | boolean }[] {
  const found: { cell: Cell; value: string | number | boolean }[] = []
  summary.eachRow((row) =>
    row.eachCell((cell) => {
      if (cell.isMerged && cell.master !== cell) return
      const value: unknown = cell.formula === undefined ? cell.value : cell.result
      if (
        typeof value === 'number' ||
        typeof value === 'boolean' ||
        (typeof value === 'string' && value !== '')
      )
        found.push({ cell, value })
    }),
  )
  return found
}

/** What stands to the left of a cell, else the beginning of its own text. */
function nameOf(summary: Worksheet, cell: Cell): string {
  for (let column = Number(cell.col) - 1; column >= 1; column -= 1) {
    const { value } = summary.getRow(Number(cell.row)).getCell(column)
    if (typeof value === 'string' && value !== '') return brief(value)
  }
  return brief(cell.text)
}

const brief = (text: string): string => {
  const line = text.replace(/\s+/g, ' ')
  return line.length > NAME_CHARACTERS ? `${line.slice(0, NAME_CHARACTERS)}…` : line
}
