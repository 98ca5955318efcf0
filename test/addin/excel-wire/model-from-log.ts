import { openLog, type Sheet } from '@draughtbook/shared-calc/log'
import { areaAddress } from '../../../addin/src/host/address.js'
import { cellText } from '../../../addin/src/host/page/cell-text.js'
import { type ModelCell, type ModelSheet, ModelWorkbook } from './workbook-model.js'

/** A log as Excel would hold it: the same cells, behind the object model. */
export function modelFromLog(bytes: Uint8Array, fileName: string): ModelWorkbook {
  const grid = openLog(bytes, fileName)
  const sheets = Object.fromEntries(
    grid.sheetNames.map((name) => {
      const sheet = grid.sheet(name)
      const cells: Record<string, ModelCell> = {}
      for (let row = 0; row < (sheet?.rows ?? 0); row++)
        for (let column = 0; column < (sheet?.columns ?? 0); column++) {
          const cell = sheet?.at(row, column)
          const address = areaAddress({ top: row + 1, bottom: row + 1, left: column + 1, right: column + 1 })
          if (cell)
            cells[address] = {
              value: cell.value,
              text: cellText(cell, grid.date1904),
              ...(cell.format === undefined ? {} : { format: cell.format }),
            }
        }
      return [name, cells]
    }),
  )
  const workbook = new ModelWorkbook(fileName, sheets)
  for (const name of grid.sheetNames) addMerged(workbook.Worksheets.Indexer(name), grid.sheet(name))
  return workbook
}

function addMerged({ merged }: ModelSheet, sheet: Sheet | undefined): void {
  for (let row = 0; row < (sheet?.rows ?? 0); row++)
    for (let column = 0; column < (sheet?.columns ?? 0); column++) {
      const block = sheet?.mergeAt(row, column)
      if (block?.top !== row || block.left !== column) continue
      merged.push({ top: row + 1, left: column + 1, bottom: block.bottom + 1, right: block.right + 1 })
    }
}
