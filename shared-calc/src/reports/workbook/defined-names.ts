import type { Workbook } from 'exceljs'
import { reference } from './address.js'
import type { PublishedFigure } from './figures.js'
import type { Places } from './places.js'

/** Names the main results at workbook level, for the reader's own formulas; ours refer by cell. */
export function nameMainResults(
  workbook: Workbook,
  figures: readonly PublishedFigure[],
  places: Places,
): void {
  for (const { name, block, symbol } of figures)
    if (name) workbook.definedNames.add(reference(places.symbol(block, symbol)), name)
}
