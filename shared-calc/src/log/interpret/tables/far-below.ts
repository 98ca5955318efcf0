import type { KnownColumn, Segment } from './columns.js'
import { PLAIN_CURVE, physicsScore, powerLaw } from './physics.js'
import type { TableRow } from './table-row.js'

/** Rows left empty at the foot of a page, with the head of the next one. */
const FARTHEST = 60

type Numeric = readonly [pressure: KnownColumn, ...carriers: KnownColumn[]]

/**
 * Whether readings go on below a gap that is longer than forms leave. Up to there nothing stands in the columns of the table. There the
 * direction or the test is named, or the pressure lies beyond all those read so far and the flow on their leakage curve: a second run begins
 * where the first began.
 * @param row - the last row known to be none of a reading
 */
export function goesOnFarBelow(
  segment: Segment,
  row: number,
  numeric: Numeric,
  rows: readonly TableRow[],
): boolean {
  const { view, columns } = segment
  const readings = rows.filter(({ kind }) => kind === 'reading')
  const next = view.turned || readings.length < 2 ? undefined : nextFilled(segment, row)
  if (next === undefined || !isLikeThoseAbove(segment, next, numeric, readings)) return false
  const isNamed = columns.some(
    ({ at, role }) => (role === 'direction' || role === 'test') && view.text(next, at) !== undefined,
  )
  if (isNamed) return true
  const [pressures = [], ...flows] = numeric.map(({ at }) =>
    [...readings.map((one) => one.row), next].map((each) => Math.abs(view.number(each, at) ?? Number.NaN)),
  )
  const own = pressures.at(-1) as number
  const above = pressures.slice(0, -1)
  if (own >= Math.min(...above) && own <= Math.max(...above)) return false
  // The pressure at the flow device begins again with every ring or plate, so it follows no curve.
  if (numeric.some(({ role }) => role === 'device')) return true
  const sums = pressures.map((_, at) => flows.reduce((sum, one) => sum + (one[at] as number), 0))
  return physicsScore(powerLaw(pressures, sums)) >= PLAIN_CURVE
}

/** The next row with anything in the columns of the table or right beside them. */
function nextFilled({ view, left, right }: Segment, row: number): number | undefined {
  for (let next = row + 1; next < Math.min(view.rows, row + FARTHEST); next++)
    for (let column = Math.max(0, left - 1); column <= right + 1; column++)
      if (view.at(next, column)) return next
  return undefined
}

/** Numbers for pressure and flow, and no words but those that readings above have in the same columns. */
function isLikeThoseAbove(
  { view, left, right }: Segment,
  row: number,
  numeric: Numeric,
  readings: readonly TableRow[],
): boolean {
  if (numeric.some(({ at }) => view.number(row, at) === undefined)) return false
  for (let column = Math.max(0, left - 1); column <= right + 1; column++) {
    const text = view.text(row, column)
    if (text !== undefined && !readings.some((one) => view.text(one.row, column) === text)) return false
  }
  return true
}
