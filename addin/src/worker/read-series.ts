import {
  type Finding,
  type LogProblem,
  type PickedRun,
  readPickedSeries,
  type SeriesSettings,
  seriesChart,
  type ToldStation,
  type Use,
} from '@draughtbook/shared-calc/log'
import { type PackedSheet, unpackSheet } from './packed-sheet.js'

export interface SeriesJob {
  kind: 'series'
  sheet: PackedSheet
  fileName: string
  date1904: boolean
  decimal?: '.' | ','
  settings: SeriesSettings
  /** Width of the picture, in CSS pixels. */
  width: number
}

/** A raw series as the pane shows it: its samples stay in the worker. */
export interface SeriesShown {
  /** The picture; absent where the columns could not be read. */
  svg?: string
  samples: number
  flow: 'm³/h' | 'Pa'
  stations: ToldStation[]
  runs: PickedRun[]
  averagingTime_s: number
  uses: Use[]
  problems: LogProblem[]
  /** Cautions of the series, before anything is taken over. */
  cautions: Finding[]
}

/** Reads a picked series and draws it. Throws LogError where its columns are not recognised. */
export function readSeries({ sheet, settings, width, ...job }: SeriesJob): SeriesShown {
  const unpacked = unpackSheet(sheet)
  const { reading, stations, runs, uses, layout, problems } = readPickedSeries(
    {
      kind: 'ranges',
      fileName: job.fileName,
      sheetNames: [unpacked.name],
      sheet: () => unpacked,
      names: [],
      date1904: job.date1904,
      ...(job.decimal === undefined ? {} : { decimal: job.decimal }),
      findings: [],
    },
    settings,
  )
  const told = new Map(
    runs.flatMap(({ findings }) => findings.map((finding) => [finding.message, finding] as const)),
  )
  return {
    ...(reading ? { svg: seriesChart(reading, width) } : {}),
    samples: reading?.series.time_s.length ?? 0,
    flow: layout.flow ? 'm³/h' : 'Pa',
    stations,
    runs,
    averagingTime_s: layout.averagingTime_s,
    uses,
    problems,
    // Rejected stations are in the table with their reason.
    cautions: [...told.values()].filter(
      ({ severity, rule }) =>
        severity === 'caution' && rule !== 'log-series-drift' && rule !== 'log-series-short',
    ),
  }
}
