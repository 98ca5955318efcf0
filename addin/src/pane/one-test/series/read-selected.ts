import type { SeriesSettings } from '@draughtbook/shared-calc/log'
import { areaAddress, intersection, joinReference, parseArea, splitReference } from '../../../host/address.js'
import { type Host, HostError } from '../../../host/host.js'
import { packSheet } from '../../../worker/packed-sheet.js'
import type { SeriesShown } from '../../../worker/read-series.js'
import { runJob } from '../../../worker/run-job.js'

/** A selection of fewer rows is a place on the sheet, not a series: the whole sheet is meant. */
const FEWEST_ROWS = 100
/** Headings stand so far above the numbers. */
const HEADINGS = 4

/** What the user means: the selected cells, or the whole sheet where only a few are selected. */
export async function selectedSource(host: Host): Promise<string> {
  const reference = await host.selectedReference()
  const { sheet = '' } = splitReference(reference)
  const used = (await host.sheets()).find(({ name }) => name === sheet)?.used
  const whole = used === undefined ? undefined : parseArea(used)
  if (!whole) throw new HostError('not-found', `Sheet ${sheet} is empty: go to the sheet with the series.`)
  const asked = parseArea(reference)
  const area = asked && intersection(asked, whole)
  const meant = area && area.bottom - area.top + 1 >= FEWEST_ROWS ? area : whole
  return joinReference(sheet, areaAddress(meant))
}

/**
 * Reads a series from these cells, headings above them included; the work is done in a worker.
 * @param width - of the picture, in CSS pixels
 */
export async function readSource(
  host: Host,
  source: string,
  settings: SeriesSettings,
  width: number,
): Promise<SeriesShown> {
  const area = parseArea(source)
  const grid = await host.grid([source])
  const sheet = area?.sheet === undefined ? undefined : grid.sheet(area.sheet)
  if (!area || !sheet) throw new HostError('not-found', `There are no cells ${source} in this workbook.`)
  const top = Math.max(1, area.top - HEADINGS)
  const packed = packSheet(sheet, {
    top: top - 1,
    left: area.left - 1,
    bottom: Math.min(area.bottom, sheet.rows) - 1,
    right: Math.min(area.right, sheet.columns) - 1,
  })
  const done = await runJob({
    kind: 'series',
    sheet: packed,
    fileName: grid.fileName,
    date1904: grid.date1904,
    ...(grid.decimal === undefined ? {} : { decimal: grid.decimal }),
    settings,
    width,
  })
  if (done.kind !== 'series-read') throw new HostError('failed', 'The series could not be read.')
  return done.series
}
