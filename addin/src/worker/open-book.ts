import { openLog, type Sheet } from '@draughtbook/shared-calc/log'
import type { OpenedBook, OpenedSheet } from '../host/cell-sheet.js'

/** Reads a file from disk into plain data for the page. Throws LogError for what is not a log or too large. */
export function openBook(bytes: Uint8Array, fileName: string): OpenedBook {
  const grid = openLog(bytes, fileName)
  const { kind, names, date1904, decimal, findings } = grid
  return {
    fileName,
    kind,
    names: [...names],
    date1904,
    ...(decimal === undefined ? {} : { decimal }),
    findings: [...findings],
    sheets: grid.sheetNames.flatMap((name) => {
      const sheet = grid.sheet(name)
      return sheet ? [plainSheet(sheet)] : []
    }),
  }
}

function plainSheet(sheet: Sheet): OpenedSheet {
  const cells: OpenedSheet['cells'] = []
  const merges = new Map<string, OpenedSheet['merges'][number]>()
  const range = (count: number): number[] => Array.from({ length: count }, (_, index) => index)
  for (let row = 0; row < sheet.rows; row++)
    for (let column = 0; column < sheet.columns; column++) {
      const cell = sheet.at(row, column)
      if (cell) cells.push([row, column, cell])
      const merge = cell && sheet.mergeAt(row, column)
      if (merge) merges.set(`${merge.top}:${merge.left}`, merge)
    }
  return {
    name: sheet.name,
    hidden: sheet.hidden,
    cells,
    merges: [...merges.values()],
    hiddenRows: range(sheet.rows).filter((row) => sheet.isRowHidden(row)),
    hiddenColumns: range(sheet.columns).filter((column) => sheet.isColumnHidden(column)),
  }
}
