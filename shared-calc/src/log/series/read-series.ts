import { seriesText } from '../../catalogue/findings/log/series.js'
import { tableText } from '../../catalogue/findings/log/tables.js'
import type { Remark } from '../../catalogue/findings/remark.js'
import type { Direction } from '../../contract/record/index.js'
import type { Collector } from '../collector.js'
import { addressOf, withSheet } from '../grid/address.js'
import { locate } from '../layout/locate.js'
import { look, settle } from '../layout/look.js'
import type { DraftRun } from '../layout/runs.js'
import type { Layout, SeriesLayout } from '../layout/schema.js'
import type { Scope } from '../layout/scope.js'
import { refuse } from '../problem.js'
import { FEW } from './average.js'
import { readColumns } from './columns.js'
import { driftLimit, type SeriesCells, type Station, type StationOptions, windowText } from './series.js'
import { findStations, sampleStep } from './stations.js'
import { zeroFlowValues } from './zero-flow-values.js'

/** A raw series as it was read, with its stations: what the pane and the page draw. */
export interface SeriesReading {
  series: SeriesCells
  stations: Station[]
}

/** A series opened, with the stations that become readings. */
export interface OpenedSeries extends SeriesReading {
  taken: readonly Station[]
}

/** Turns a gauge's time log into runs: readings from its steady stations, zero-flow values from those without flow. */
export function readSeriesRuns(
  scope: Scope,
  layout: Layout,
  given: SeriesLayout,
  first: number,
  collector: Collector,
): { runs: DraftRun[]; series: SeriesReading[] } {
  const opened = openSeries(scope, layout, given, `runs[${first}]`, collector)
  const { series, stations } = opened
  const directions = seriesDirections(scope, layout, given, opened, `runs[${first}]`, collector)
  const runs = directions.map((direction, index) =>
    seriesRun(opened, directions, direction, given, `runs[${first + index}]`, collector),
  )
  return { runs, series: [{ series, stations }] }
}

/** Reads the samples of a series and finds its stations. @throws LogError `series-unusable` and those of the columns */
export function openSeries(
  scope: Scope,
  layout: Layout,
  given: SeriesLayout,
  path: string,
  collector: Collector,
): OpenedSeries {
  const cells = readColumns(scope, layout, given, collector, path)
  if (cells.time_s.length < 2)
    refuse(
      'series-unusable',
      'fewer than two samples of the series can be read: check its columns and units',
      { path },
    )
  if (given.sign === 'outside minus inside') {
    cells.pressure_Pa = cells.pressure_Pa.map((value) => (value === 0 ? 0 : -value))
    collector.tell(tableText('log-sign'), whole(cells), path)
  }
  checkSampling(cells, collector, path)
  const stations = findStations(cells, optionsOf(given))
  const taken = stations.filter(({ kind, rejected }) => kind === 'reading' && !rejected)
  return { series: cells, stations, taken }
}

function optionsOf({ averagingTime_s, driftLimit_Pa }: SeriesLayout): StationOptions {
  return { averagingTime_s, ...(driftLimit_Pa === undefined ? {} : { driftLimit_Pa }) }
}

/**
 * The directions of the readings; rejected stations are told of.
 * @throws LogError `series-unusable` where no station holds steady
 */
export function seriesDirections(
  scope: Scope,
  layout: Layout,
  given: SeriesLayout,
  { series, stations, taken }: OpenedSeries,
  path: string,
  collector: Collector,
): Direction[] {
  if (taken.length === 0)
    refuse(
      'series-unusable',
      `the pressure is never steady for the averaging time of ${given.averagingTime_s} s: choose a shorter averaging time, or enter the readings by hand`,
      {
        path,
      },
    )
  for (const station of stations)
    if (station.rejected) tellRejected(series, station, optionsOf(given), collector, path)
  return directionsOf(scope, layout, given, taken, path, collector)
}

/** The run of one direction, with its zero-flow values. */
export function seriesRun(
  { series, stations, taken }: OpenedSeries,
  directions: readonly Direction[],
  direction: Direction,
  given: SeriesLayout,
  path: string,
  collector: Collector,
): DraftRun {
  const own = taken.filter(
    ({ pressure }) => directions.length === 1 || pressure.mean < 0 === (direction === 'depressurisation'),
  )
  return draftRun(series, stations, own, direction, given, path, collector)
}

function directionsOf(
  scope: Scope,
  layout: Layout,
  given: SeriesLayout,
  taken: readonly Station[],
  path: string,
  collector: Collector,
): Direction[] {
  if (given.direction === 'by sign')
    return [
      ...new Set(
        taken.map(({ pressure }): Direction => (pressure.mean < 0 ? 'depressurisation' : 'pressurisation')),
      ),
    ]
  if (typeof given.direction === 'string') return [given.direction]
  const at = `${path}.direction`
  const found = locate(scope, given.direction.at, at)
  const value = settle(look(scope, layout, found, at, { words: given.direction.words }), collector, at)
  return value === undefined ? [] : [value as Direction]
}

function draftRun(
  cells: SeriesCells,
  stations: readonly Station[],
  own: readonly Station[],
  direction: Direction,
  given: SeriesLayout,
  path: string,
  collector: Collector,
): DraftRun {
  const draft: DraftRun = { direction, averagingTime_s: given.averagingTime_s, readings: [] }
  for (const [index, station] of own.entries()) {
    const at = `${path}.readings[${index}]`
    const range = windowText(cells, station.window)
    collector.cells[`${at}.pressure_Pa`] = range
    collector.cells[`${at}.${cells.flowKind}`] = windowText(cells, station.window, cells.flowColumn)
    draft.readings.push({
      pressure_Pa: station.pressure.mean,
      [cells.flowKind]: station.flow.mean,
      ...scatterOf(station, cells.flowKind),
      ...(given.range && cells.flowKind === 'devicePressure_Pa' ? { range: given.range.value } : {}),
    })
    for (const field of Object.keys(scatterOf(station, cells.flowKind)))
      collector.cells[`${at}.${field}`] =
        field === 'pressureUncertainty_Pa' ? range : windowText(cells, station.window, cells.flowColumn)
    collector.tell(averaged(cells, station), range, at)
    if (given.range)
      collector.tell(
        tableText('log-constant', { field: 'range', value: given.range.value }),
        '',
        `${at}.range`,
      )
  }
  const start = own[0]?.first ?? 0
  const end = own.at(-1)?.last ?? 0
  const zeros = stations.filter(({ kind }) => kind === 'zero-flow')
  // Between two runs one block serves as the end of the first and the beginning of the second.
  const before = zeros.filter(({ last }) => last < start).at(-1)
  const after = zeros.find(({ first }) => first > end)
  if (before) draft.zeroFlowBefore_Pa = zeroFlowValues(cells, before, `${path}.zeroFlowBefore_Pa`, collector)
  if (after) draft.zeroFlowAfter_Pa = zeroFlowValues(cells, after, `${path}.zeroFlowAfter_Pa`, collector)
  if (!before || !after) {
    const which = before ? 'after' : after ? 'before' : 'before or after'
    collector.tell(seriesText('log-series-no-zero-flow', { which }), whole(cells), path)
  }
  return draft
}

/**
 * Standard uncertainties of the averages, where the samples tell them. None where all samples are the same: that says
 * how coarse the log is, not that the average is exact.
 */
function scatterOf({ pressure, flow }: Station, flowKind: SeriesCells['flowKind']): Record<string, number> {
  const ofFlow = flowKind === 'flow_m3_h' ? 'flowUncertainty_m3_h' : 'devicePressureUncertainty_Pa'
  return {
    ...(pressure.standardUncertainty && { pressureUncertainty_Pa: pressure.standardUncertainty }),
    ...(flow.standardUncertainty && { [ofFlow]: flow.standardUncertainty }),
  }
}

const averaged = (cells: SeriesCells, { pressure, flow }: Station): Remark =>
  seriesText('log-series-reading', {
    samples: pressure.samples,
    mean: pressure.mean,
    deviation: pressure.standardDeviation,
    drift: pressure.drift,
    uncertainty: pressure.standardUncertainty,
    few: pressure.effectiveSamples < FEW,
    device: {
      mean: flow.mean,
      deviation: flow.standardDeviation,
      unit: cells.flowKind === 'flow_m3_h' ? 'm³/h' : 'Pa',
    },
  })

function tellRejected(
  cells: SeriesCells,
  station: Station,
  options: StationOptions,
  collector: Collector,
  path: string,
): void {
  const { pressure, window } = station
  const seconds = (cells.time_s[station.last] ?? 0) - (cells.time_s[station.first] ?? 0)
  const { mean, drift } = pressure
  const time_s = options.averagingTime_s
  collector.tell(
    station.rejected === 'drift'
      ? seriesText('log-series-drift', { mean, drift, time_s, limit: driftLimit(pressure, options) })
      : seriesText('log-series-short', { mean, held_s: seconds, time_s }),
    windowText(cells, window),
    path,
  )
}

/** Gauges log at 1 to 10 Hz; a slower log leaves too few samples to judge steadiness by. */
function checkSampling(cells: SeriesCells, collector: Collector, path: string): void {
  const step = sampleStep(cells.time_s)
  if (step > 2) collector.tell(seriesText('log-series-slow', { step_s: step }), whole(cells), path)
  for (let index = 1; index < cells.time_s.length; index++) {
    const gap = (cells.time_s[index] as number) - (cells.time_s[index - 1] as number)
    if (gap > 5 * step)
      collector.tell(
        seriesText('log-series-gap', { gap_s: gap }),
        windowText(cells, { first: index, last: index }),
        path,
      )
  }
}

function whole(cells: SeriesCells): string {
  const last = cells.rows.at(-1) ?? 0
  return withSheet(
    cells.sheet,
    `${addressOf(cells.rows[0] ?? 0, cells.column)}:${addressOf(last, cells.column)}`,
  )
}
