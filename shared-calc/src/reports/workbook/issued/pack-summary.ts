import type { Workbook } from 'exceljs'
import { addChartsTo } from '../chart/add-charts.js'
import type { ChartDescription } from '../chart/description.js'
import { addPicturesTo, type PlacedPicture } from '../pictures/add-pictures.js'
import type { Parts } from '../zip/parts.js'
import { workbookParts } from '../zip/workbook-parts.js'

/**
 * The parts of a summary that was laid out, its chart and pictures included; still without the list of their digests.
 * @param fonts - how what a font holds is ordered; version 1.0.0 left it as exceljs writes it
 */
export async function packSummary(
  { workbook, chart, pictures = [] }: LaidOut,
  fonts: 'in order' | 'as exceljs writes' = 'in order',
): Promise<Parts> {
  const parts = await workbookParts(workbook, fonts)
  addChartsTo(parts, [chart])
  addPicturesTo(parts, pictures)
  return parts
}

interface LaidOut {
  readonly workbook: Workbook
  readonly chart: ChartDescription
  readonly pictures?: readonly PlacedPicture[]
}
