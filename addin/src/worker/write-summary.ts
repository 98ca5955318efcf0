import { type ChartDescription, choosePictures, writeSummary } from '@draughtbook/shared-calc/workbook'
import { columnLetters } from '../host/address.js'
import type { InsertedChart } from '../host/host.js'
import { forInsertion } from './for-insertion.js'
import type { Job } from './messages.js'

type SummaryJob = Extract<Job, { kind: 'summary' }>

/** The summary workbook, and its chart as cells for hosts that lose charts on the way. */
export async function writeSummaryFor({
  record,
  cells,
  findings,
  photos,
  firm,
  insertBeside,
}: SummaryJob): Promise<{ bytes: Uint8Array; chart: InsertedChart }> {
  const { bytes, chart } = await writeSummary(record, {
    cells,
    findings,
    ...((photos || firm) && {
      pictures: await choosePictures(record, { ...(photos && { photos }), ...(firm && { firm }) }),
    }),
  })
  if (!insertBeside) return { bytes, chart: insertedChart(chart, new Map()) }
  const fitted = forInsertion(bytes, insertBeside)
  return { bytes: fitted.bytes, chart: insertedChart(chart, fitted.renamed) }
}

function insertedChart(chart: ChartDescription, renamed: ReadonlyMap<string, string>): InsertedChart {
  const sheet = (name: string): string => renamed.get(name) ?? name
  return {
    sheet: sheet(chart.sheetName),
    anchor: `${columnLetters(chart.anchor.fromCol + 1)}${chart.anchor.fromRow + 1}`,
    title: chart.title,
    xTitle: chart.xAxis.title,
    yTitle: chart.yAxis.title,
    series: chart.series.flatMap(({ name, xRef, yRef, style }) =>
      xRef
        ? [
            {
              name: String(name),
              sheet: sheet(yRef.sheet),
              x: xRef.range,
              y: yRef.range,
              kind: style?.line ? 'line' : 'points',
            },
          ]
        : [],
    ),
  }
}
