import type { Direction, Finding, Reading, Run } from '../../contract/record/index.js'
import { Collector } from '../collector.js'
import type { Grid, Sheet } from '../grid/grid.js'
import { findSeries } from '../interpret/find-series.js'
import type { Use } from '../interpret/interpretation.js'
import { gathering } from '../layout/details.js'
import type { DraftRun } from '../layout/runs.js'
import { LAYOUT_FORMAT, type Layout, parseLayout, type SeriesLayout } from '../layout/schema.js'
import { type LogProblem, refuse } from '../problem.js'
import { type ChosenColumns, chosenColumns } from './chosen-columns.js'
import {
  type OpenedSeries,
  openSeries,
  type SeriesReading,
  seriesDirections,
  seriesRun,
} from './read-series.js'
import { type ToldStation, toldStations } from './told-stations.js'

type DraftReading = DraftRun['readings'][number]

/** What the user sets; the rest is found by the headings. */
export type SeriesSettings = Partial<
  Pick<SeriesLayout, 'averagingTime_s' | 'driftLimit_Pa' | 'sign' | 'range'>
> & {
  direction?: Direction | 'by sign'
  /** In place of what the headings say. */
  columns?: ChosenColumns
}

/** One run a series comes to. Paths start at the run: `readings[0].pressure_Pa`. */
export interface PickedRun {
  run: Run
  /** Field path → cells. */
  cells: Readonly<Record<string, string>>
  /** Those of the series as a whole included. */
  findings: Finding[]
}

export interface PickedSeries {
  /** Present where the columns could be read and a station holds. */
  reading?: SeriesReading
  stations: ToldStation[]
  runs: PickedRun[]
  /** What each column was used as, where they were found by their headings. */
  uses: Use[]
  /** By which the series was read. */
  layout: SeriesLayout
  problems: LogProblem[]
}

/**
 * Reads a gauge's time log that was picked by hand: the columns are found by their headings, the stations averaged.
 * @param grid - the log, or the part of it that was selected, headings included
 * @throws LogError `series-unusable` where the headings name no time, pressure and flow; `ambiguous` where they name several;
 * `layout-invalid` where a column named by hand is none
 */
export function readPickedSeries(grid: Grid, settings: SeriesSettings = {}): PickedSeries {
  const { columns, ...wishes } = settings
  const sheet = grid.sheet(grid.sheetNames[0] ?? '')
  if (!sheet) refuse('series-unusable', 'there is no sheet to read')
  const { layout, uses } = columns ? byColumns(sheet, columns) : byHeadings(grid)
  const given: SeriesLayout = { ...layout.series[0], ...defined(wishes) }
  const general = new Collector()
  const scope = { grid, sheet, top: 0, bottom: sheet.rows - 1, shift: 0 }
  const [opened] = gathered(general, () => [openSeries(scope, layout, given, PATH, general)])
  const directions = opened
    ? gathered(general, () => seriesDirections(scope, layout, given, opened, PATH, general))
    : []
  return {
    ...(opened ? { reading: { series: opened.series, stations: opened.stations } } : {}),
    stations: opened ? toldStations(opened) : [],
    runs: opened ? directions.map((direction) => picked(opened, directions, direction, given, general)) : [],
    uses,
    layout: given,
    problems: general.problems,
  }
}

interface Found {
  layout: Layout & { series: [SeriesLayout] }
  uses: Use[]
}

function byHeadings(grid: Grid): Found {
  const { columns, uses } = findSeries(grid)
  return { layout: layoutOf('columns as headed', columns), uses }
}

const byColumns = (sheet: Sheet, columns: ChosenColumns): Found => ({
  layout: layoutOf('columns as named', chosenColumns(sheet, columns)),
  uses: [],
})

function layoutOf(name: string, columns: object): Found['layout'] {
  const layout = parseLayout({
    format: LAYOUT_FORMAT,
    name,
    fields: [],
    series: [{ direction: 'by sign', ...columns }],
  })
  const [series] = layout.series
  if (!series) refuse('layout-invalid', 'the layout names no series')
  return { ...layout, series: [series] }
}

function picked(
  opened: OpenedSeries,
  directions: readonly Direction[],
  direction: Direction,
  given: SeriesLayout,
  general: Collector,
): PickedRun {
  const collector = new Collector()
  const run = seriesRun(opened, directions, direction, given, PATH, collector)
  return {
    run: { ...run, direction, readings: run.readings.map(reading) },
    cells: Object.fromEntries(Object.entries(collector.cells).map(([path, cell]) => [bare(path), cell])),
    findings: [...general.findings(), ...collector.findings()].map((finding) => ({
      ...finding,
      where: finding.where.map(bare).filter(Boolean),
    })),
  }
}

/** A reading of a draft, which a series fills with a pressure and either a flow or a device pressure. */
const reading = ({ pressure_Pa, range, ...given }: DraftReading): Reading => ({
  pressure_Pa: Number(pressure_Pa),
  ...Object.fromEntries(
    numbersOfReading.flatMap((field) => (given[field] === undefined ? [] : [[field, Number(given[field])]])),
  ),
  ...(range === undefined ? {} : { range: String(range) }),
})

const numbersOfReading = [
  'flow_m3_h',
  'devicePressure_Pa',
  'pressureUncertainty_Pa',
  'flowUncertainty_m3_h',
  'devicePressureUncertainty_Pa',
] as const

/** What a step gives; nothing where it fails, which becomes a problem. */
function gathered<T>(collector: Collector, step: () => T[]): T[] {
  let found: T[] = []
  gathering(collector, () => {
    found = step()
  })
  return found
}

/** Where a run is in a record is decided by whoever takes it over. */
const PATH = 'run'
const bare = (path: string): string => path.replace(/^run\.?/, '')

const defined = (settings: Omit<SeriesSettings, 'columns'>): Partial<SeriesLayout> =>
  Object.fromEntries(Object.entries(settings).filter(([, value]) => value !== undefined))
