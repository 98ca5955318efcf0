import type { Collector } from '../collector.js'
import type { SeriesCells } from './columns.js'
import type { Station } from './series.js'
import { windowText } from './window-text.js'

/** Averages are taken over 1 s, or longer where a block would give more values than a record holds. */
const VALUE_S = 1
const MOST_VALUES = 1000
/** Common advice for the length of a zero-flow block, ISO 9972:2015, 5.3.3 (value from memory). */
const BLOCK_S = 30

/** A zero-flow stretch as values of 1 s, Pa. A stretch under 30 s is told of. */
export function zeroFlowValues(
  cells: SeriesCells,
  station: Station,
  path: string,
  collector: Collector,
): number[] {
  const { first, last } = station
  const start = cells.time_s[first] as number
  const length = (cells.time_s[last] as number) - start
  const width = Math.max(VALUE_S, length / MOST_VALUES)
  const sums: { sum: number; count: number }[] = []
  for (let index = first; index <= last; index++) {
    const slot = Math.min(MOST_VALUES - 1, Math.floor(((cells.time_s[index] as number) - start) / width))
    sums[slot] ??= { sum: 0, count: 0 }
    const bin = sums[slot]
    bin.sum += cells.pressure_Pa[index] as number
    bin.count++
  }
  const values = sums.filter(Boolean).map(({ sum, count }) => sum / count)
  const range = windowText(cells, station)
  collector.cells[path] = range
  collector.tell(
    'note',
    'log-series-zero-flow',
    `${values.length} averages of ${Number(width.toPrecision(3))} s of the stretch without flow`,
    range,
    path,
  )
  if (length < BLOCK_S)
    collector.tell(
      'caution',
      'log-series-zero-short',
      `the stretch without flow holds for ${Math.round(length)} s only; ${BLOCK_S} s are asked for`,
      range,
      path,
    )
  return values
}
