import type { Workbook, XlsxWriteOptions } from 'exceljs'
import { addChartsTo } from '../chart/add-charts.js'
import type { ChartDescription } from '../chart/description.js'
import { escapeStandIns } from '../held-texts.js'
import { addPicturesTo, type PlacedPicture } from '../pictures/add-pictures.js'
import { type Parts, readParts } from '../zip/parts.js'

/** The parts are packed when everything is in them: packing them here would be work done twice. */
const UNPACKED = { zip: { compression: 'STORE' } } as Partial<XlsxWriteOptions>

/** The parts of a summary that was laid out, its chart and pictures included; still without the list of their digests. */
export async function packSummary({
  workbook,
  chart,
  pictures = [],
}: {
  readonly workbook: Workbook
  readonly chart: ChartDescription
  readonly pictures?: readonly PlacedPicture[]
}): Promise<Parts> {
  const parts = readParts(new Uint8Array(await workbook.xlsx.writeBuffer(UNPACKED)))
  escapeStandIns(parts)
  addChartsTo(parts, [chart])
  addPicturesTo(parts, pictures)
  return parts
}
