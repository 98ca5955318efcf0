import { z } from 'zod'
import type { Average } from './average.js'
import type { SeriesReading } from './read-series.js'
import { windowText } from './series.js'

const finite = z.number()

const ToldAverage = z.strictObject({
  mean: finite,
  standardDeviation: finite,
  samples: z.int(),
  effectiveSamples: finite,
  standardUncertainty: finite.optional(),
  drift: finite,
})

/** One steady stretch of a raw series, as an answer tells of it. Times in s as logged; pressures in Pa; flow as the series has it. */
export const ToldStation = z.strictObject({
  kind: z.enum(['reading', 'zero-flow']),
  cells: z.string(),
  start_s: finite,
  end_s: finite,
  pressure: ToldAverage,
  flow: ToldAverage,
  rejected: z.enum(['drift', 'short']).optional(),
})
export type ToldStation = z.infer<typeof ToldStation>

/** The stations of a series without its samples. */
export function toldStations({ series, stations }: SeriesReading): ToldStation[] {
  return stations.map(({ kind, window, pressure, flow, rejected }) => ({
    kind,
    cells: windowText(series, window),
    start_s: series.time_s[window.first] ?? 0,
    end_s: series.time_s[window.last] ?? 0,
    pressure: told(pressure),
    flow: told(flow),
    ...(rejected ? { rejected } : {}),
  }))
}

function told({ driftUncertainty: _, ...average }: Average): z.infer<typeof ToldAverage> {
  return average
}
