import type ExcelJS from 'exceljs'
import { type Block, toSheet } from '../../../../shared-calc/src/engine/index.js'

/** Writes a block below what stands on a sheet, a column a symbol: what it was given as numbers, its steps as formulas. */
export function writeBlock(sheet: ExcelJS.Worksheet, block: Block<string>): void {
  const { chapter } = block
  const top = sheet.rowCount + 2
  const last = top + Math.max(1, block.rows) - 1
  const symbols = [...chapter.slots.keys()]
  const letter = (symbol: string) => sheet.getColumn(symbols.indexOf(symbol) + 1).letter
  const isColumn = (symbol: string) => chapter.slots.get(symbol)?.rows === true
  const valuesOf = (symbol: string) => (isColumn(symbol) ? [...block.column(symbol)] : [block.value(symbol)])

  for (const { symbol } of [...chapter.constants, ...chapter.inputs])
    valuesOf(symbol).forEach((value, i) => {
      sheet.getCell(`${letter(symbol)}${top + i}`).value = value
    })
  for (const step of chapter.steps)
    valuesOf(step.symbol).forEach((result, i) => {
      const formula = toSheet(step.tree, {
        cell: (symbol) => `${letter(symbol)}${isColumn(symbol) ? top + i : top}`,
        range: (symbol) =>
          isColumn(symbol) ? `${letter(symbol)}${top}:${letter(symbol)}${last}` : undefined,
      })
      sheet.getCell(`${letter(step.symbol)}${top + i}`).value = { formula, result }
    })
}
