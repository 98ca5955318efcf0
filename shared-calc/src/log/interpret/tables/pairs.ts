import type { Direction } from '../../../contract/record/index.js'
import { directionIn, readLabel, says } from '../words/label.js'
import type { KnownColumn } from './columns.js'
import type { Head } from './heads.js'
import { PLAIN_CURVE, physicsScore, powerLaw } from './physics.js'
import type { Figure } from './table-row.js'

/** Pressure and flow of one reading, in a list with one row a run. */
export interface Pair {
  index: string
  pressure: KnownColumn
  flow: KnownColumn
  direction?: Direction
  /** The pressure that the heading of the flow states. */
  stated?: Figure
}

export function pairsOf(columns: readonly KnownColumn[]): Pair[] {
  const flows = new Map<string, KnownColumn>()
  for (const column of columns) {
    const key = column.role === 'flow' || column.role === 'corrected' ? keyOf(column) : undefined
    if (key && !flows.has(key)) flows.set(key, column)
  }
  return columns.flatMap((pressure): Pair[] => {
    const key = pressure.role === 'pressure' || pressure.role === 'induced' ? keyOf(pressure) : undefined
    const flow = key ? flows.get(key) : undefined
    if (!key || !flow) return []
    const direction = directionIn(pressure.label) ?? directionIn(flow.label)
    return [{ index: key, pressure, flow, ...(direction ? { direction } : {}) }]
  })
}

/** A run has readings at so many pressures at least. */
const FEWEST = 3
/** In one row the pressures of a run differ by more, in one column those of several houses by less. */
const SPREAD = 1.4

/**
 * "Pa | m³/h | Pa | m³/h | …" with nothing to number them: pairs of one row where the row follows a leakage curve and the pressures
 * below one another do not. A direction over the first of several pairs goes for those behind it.
 */
export function repeatedPairs({ view, first }: Head, columns: readonly KnownColumn[]): Pair[] {
  // In lines below one another titles part the runs, which are read elsewhere.
  if (view.turned) return []
  let direction: Direction | undefined
  const found = columns.flatMap((pressure, index): Pair[] => {
    const flow = columns[index + 1]
    direction = directionIn(pressure.label) ?? direction
    const isPair =
      (pressure.role === 'pressure' || pressure.role === 'induced') &&
      !says(pressure.label, 'zero') &&
      (flow?.role === 'flow' || flow?.role === 'corrected') &&
      flow.at === pressure.at + 1
    if (!isPair) return []
    return [{ index: `${direction ?? ''}${index}`, pressure, flow, ...(direction ? { direction } : {}) }]
  })
  const [one] = found
  const isAlike = ({ pressure, flow }: Pair) =>
    wordsOf(pressure) === wordsOf(one?.pressure) && wordsOf(flow) === wordsOf(one?.flow)
  const runs = [...new Set(found.map((pair) => pair.direction))].map((own) =>
    found.filter((pair) => pair.direction === own),
  )
  if (!found.every(isAlike) || runs.some((pairs) => pairs.length < FEWEST)) return []
  const rows = Array.from({ length: ROWS }, (_, index) => first + index).filter((row) =>
    runs.some((pairs) => pairs.filter((pair) => isFilled(view, row, pair)).length >= FEWEST),
  )
  const follow = (row: number) =>
    runs.every((pairs) => {
      const own = pairs.filter((pair) => isFilled(view, row, pair))
      const [pressures, flows] = [
        own.map(({ pressure }) => view.number(row, pressure.at) as number),
        own.map(({ flow }) => view.number(row, flow.at) as number),
      ]
      return (
        own.length === 0 ||
        (ratio(pressures) > SPREAD && physicsScore(powerLaw(pressures, flows)) >= PLAIN_CURVE)
      )
    })
  const isLevel = found.every(({ pressure }) => {
    const below = rows.flatMap((row) => view.number(row, pressure.at) ?? [])
    return below.length < FEWEST || ratio(below) < SPREAD
  })
  return rows.length > 0 && rows.every(follow) && isLevel ? found : []
}

/** Rows of a list that are looked at. */
const ROWS = 12

const isFilled = (view: Head['view'], row: number, { pressure, flow }: Pair): boolean =>
  view.number(row, pressure.at) !== undefined && view.number(row, flow.at) !== undefined

const ratio = (values: readonly number[]): number => {
  const sizes = values.map(Math.abs)
  return Math.max(...sizes) / Math.min(...sizes)
}

/** Words of a heading without those of a direction. */
const wordsOf = (column: KnownColumn | undefined): string =>
  (column?.label.tokens ?? []).filter((token) => !directionIn(readLabel(token))).join(' ')

/** Number of the reading and its direction, as in "P3 Pa" or "dep. flow 3". */
export function keyOf({ label }: KnownColumn): string | undefined {
  const figure = label.tokens
    .filter((token) => !/^(?:n?m|ft|sm)[23]$/.test(token))
    .map((token) => /^\p{L}{0,6}?(\d{1,2})$/u.exec(token)?.[1])
    .find((one) => one)
  return figure ? `${directionIn(label) ?? ''}${figure}` : undefined
}
