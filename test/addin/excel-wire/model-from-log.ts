import { openLog } from '@draughtbook/shared-calc/log'
import { areaAddress } from '../../../addin/src/host/address.js'
import { cellText } from '../../../addin/src/host/page/cell-text.js'
import { type ModelCell, ModelWorkbook } from './workbook-model.js'

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
  return new ModelWorkbook(fileName, sheets)
}
