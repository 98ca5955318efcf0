import { addressOf, withSheet } from '../log/grid/address.js'
import type { Places } from '../reports/workbook/places.js'
import type { InputCells } from './compare-sheets.js'

/** Cells that hold a field of the record as it was logged. */
export function inputCells(places: Places): InputCells {
  return new Map(
    [...places.fields].map(([path, { sheet, row, column }]) => [
      withSheet(sheet, addressOf(row - 1, column - 1)),
      path,
    ]),
  )
}
