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
  /** How many pairs of the same number and direction are in front of it: those of other runs. */
  turn?: number
  direction?: Direction
  /** The pressure that the heading of the flow states. */
  stated?: Figure
}

export function pairsOf(columns: readonly KnownColumn[]): Pair[] {
  const flows = byKey(columns.filter(({ role }) => role === 'flow' || role === 'corrected'))
  const pressures = byKey(columns.filter(({ role }) => role === 'pressure' || role === 'induced'))
  const stems = new Map<string, number>()
  for (const column of columns) stems.set(stemOf(column), (stems.get(stemOf(column)) ?? 0) + 1)
  const weight = (one: KnownColumn) => stems.get(stemOf(one)) ?? 0
  const found = [...pressures].flatMap(([index, each]): Pair[] => {
    // What was measured goes before what was worked out from it.
    const all = preferred(each, 'pressure')
    const own = preferred(flows.get(index) ?? [], 'flow').slice(0, MOST_TURNS)
    // "Z0 | Z1 | p1 | q1": Z1 has the number of the first reading, but the letter of another thing. No flow is that of two pressures.
    const heaviest = new Set([...all].sort((one, other) => weight(other) - weight(one)).slice(0, own.length))
    return all
      .filter((one) => heaviest.has(one))
      .flatMap((pressure, turn): Pair[] => {
        const flow = own[turn]
        if (!flow) return []
        const direction = directionIn(pressure.label) ?? directionIn(flow.label)
        return [{ index, turn, pressure, flow, ...(direction ? { direction } : {}) }]
      })
  })
  return found.sort((one, other) => one.pressure.at - other.pressure.at)
}

function preferred(columns: readonly KnownColumn[], role: KnownColumn['role']): readonly KnownColumn[] {
  const own = columns.filter((one) => one.role === role)
  return own.length > 0 ? own : columns
}

/** A line of a list holds the runs of so many houses at most. */
const MOST_TURNS = 12

function byKey(columns: readonly KnownColumn[]): Map<string, KnownColumn[]> {
  const found = new Map<string, KnownColumn[]>()
  for (const column of columns) {
    const key = keyOf(column)
    const own = key === undefined ? undefined : found.get(key)
    if (own) own.push(column)
    else if (key !== undefined) found.set(key, [column])
  }
  return found
}

/** The words of a heading without figures. */
const stemOf = ({ label }: KnownColumn): string =>
  label.tokens.map((token) => token.replace(/\d{1,2}$/, '')).join(' ')

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
