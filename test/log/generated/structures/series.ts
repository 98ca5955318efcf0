import { putFields } from '../parts/fields.js'
import { labelled } from '../parts/say.js'
import { Sheet } from '../write/sheet.js'
import type { Layer } from './structure.js'

const STATION_s = 60
const MOVE_s = 12

/** One value a second of a whole run: zero flow, each station with the way to the next, zero flow again. */
export const series: Layer = ([test], recipe, random) => {
  const run = test?.written.runs[0]
  if (!test || !run) return []
  const { words, units, dirt, tableUnits, file } = recipe
  const onSheet = file === 'xlsx'
  const sheet = new Sheet(onSheet ? 'Data' : 'Export')
  let at = 1
  if (!onSheet && recipe.missing.length === 0) at = putFields(sheet, at, 1, test.written, recipe) + 1
  if (dirt.includes('junk lines')) {
    sheet.put(at++, 1, '# logger start')
    sheet.put(at++, 1, '# channel A: building, channel B: fan')
  }
  const time = tableUnits === 'row' ? 'Time' : labelled('Time', 's', tableUnits)
  sheet.line(at++, 1, [
    time,
    labelled(words.pressure, units.pressure.symbol, tableUnits),
    labelled(words.flow, units.flow.symbol, tableUnits),
  ])
  if (tableUnits === 'row') sheet.line(at++, 1, ['s', units.pressure.symbol, units.flow.symbol])
  let second = 0
  const { digits } = units.flow
  const put = (pressure: number, flow: number) =>
    sheet.line(at++, 1, [second++, Number(pressure.toFixed(1)), Number(flow.toFixed(digits))])
  const hold = (pressure: number, flow: number, length: number) => {
    // Pairs of opposite noise keep the mean of the station where the figures of the test have it.
    for (let count = 0; count < length; count += 2) {
      const [wind, stream] = [0.35 * random.normal(), 0.004 * flow * random.normal()]
      put(pressure + wind, flow + stream)
      put(pressure - wind, flow - stream)
    }
  }
  const move = (from: readonly [number, number], to: readonly [number, number]) => {
    for (let step = 1; step <= MOVE_s; step++) {
      const share = step / (MOVE_s + 1)
      put(from[0] + share * (to[0] - from[0]), from[1] + share * (to[1] - from[1]))
    }
  }
  let before: readonly [number, number] = [run.before[0] ?? 0, 0]
  hold(before[0], 0, STATION_s)
  for (const { pressure, flow } of run.readings) {
    move(before, [pressure, flow])
    hold(pressure, flow, STATION_s)
    before = [pressure, flow]
  }
  move(before, [run.after[0] ?? 0, 0])
  hold(run.after[0] ?? 0, 0, STATION_s)
  if (!onSheet) return [sheet]
  const job = new Sheet('House')
  putFields(job, 1, 1, test.written, recipe)
  return [job, sheet]
}
