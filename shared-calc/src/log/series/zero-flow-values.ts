import { seriesText } from '../../catalogue/findings/log/series.js'
import type { Collector } from '../collector.js'
import { type SeriesCells, type Station, windowText } from './series.js'
import { sampleStep } from './stations.js'

/** Averages are taken over 1 s, or longer where a block would give more values than a record holds. */
const VALUE_S = 1
const MOST_VALUES = 1000
/** Common advice for the length of a zero-flow block, ISO 9972:2015, 5.3.3 (value from memory). */
const BLOCK_S = 30

/** A zero-flow stretch as values of 1 s, Pa. A stretch under 30 s is reported. */
export function zeroFlowValues(
  cells: SeriesCells,
  station: Station,
  path: string,
  collector: Collector,
): number[] {
  const { first, last } = station
  const samples = last - first + 1
  const step = sampleStep(cells.time_s)
  const each = Math.max(Math.round(VALUE_S / step), Math.ceil(samples / MOST_VALUES), 1)
  const width = each * step
  const length = samples * step
  const values: number[] = []
  // What is left over at the end, less than one value's worth, is not averaged.
  for (let at = first; at + each - 1 <= last; at += each) {
    let sum = 0
    for (let index = at; index < at + each; index++) sum += cells.pressure_Pa[index] as number
    values.push(sum / each)
  }
  const range = windowText(cells, { first, last })
  collector.cells[path] = range
  collector.tell(seriesText('log-series-zero-flow', { values: values.length, each_s: width }), range, path)
  if (length < BLOCK_S)
    collector.tell(seriesText('log-series-zero-short', { held_s: length, needed_s: BLOCK_S }), range, path)
  return values
}
