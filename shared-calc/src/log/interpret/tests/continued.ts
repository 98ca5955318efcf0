import type { FoundField } from '../fields/found-field.js'
import { PLAIN_CURVE, physicsScore, powerLaw } from '../tables/physics.js'
import type { FoundRun } from '../tables/runs.js'
import { directionIn, readLabel } from '../words/label.js'
import { directionOf } from './test-group.js'

/** A page break with its heading takes so many rows at most. */
const ROWS_BETWEEN = 8

/**
 * A table that goes on below a page break under the same headings is one run: no direction and no value of a test is named between the two
 * parts, their pressures do not overlap, and all readings follow one leakage curve. A second test would begin again at the top.
 */
export function joinContinued(runs: readonly FoundRun[], fields: readonly FoundField[]): FoundRun[] {
  const joined: FoundRun[] = []
  for (const run of runs) {
    const before = joined.findIndex((one) => goesOn(one, run, fields) || goesOnBeside(one, run))
    if (before < 0) joined.push(run)
    else joined[before] = together(joined[before] as FoundRun, run)
  }
  return joined
}

function goesOn(one: FoundRun, other: FoundRun, fields: readonly FoundField[]): boolean {
  const gap = other.top - one.bottom
  if (one.view !== other.view || one.view.turned || gap < 1 || gap > ROWS_BETWEEN) return false
  if (one.row !== undefined || other.row !== undefined || one.test !== other.test) return false
  if (one.left !== other.left || one.right !== other.right || !isSameHead(one, other)) return false
  if (directionOf(one) !== directionOf(other)) return false
  if (one.zeroAfter.length + other.zeroBefore.length > 0) return false
  const isBetween = ({ view, row }: FoundField) =>
    view.name === one.view.name && row > one.bottom && row < other.top
  if (fields.some(isBetween) || namesDirection(one, other)) return false
  return isOneCurve(one, other)
}

/** Pressures that do not overlap, on one leakage curve. */
function isOneCurve(one: FoundRun, other: FoundRun): boolean {
  const [first, second] = [sizesOf(one), sizesOf(other)]
  const apart = Math.max(...second) < Math.min(...first) || Math.min(...second) > Math.max(...first)
  return (
    apart &&
    physicsScore(powerLaw([...first, ...second], [...flowsOf(one), ...flowsOf(other)])) >= PLAIN_CURVE
  )
}

/** Columns between two parts side by side: a blank one and the numbers of the readings. */
const COLUMNS_BETWEEN = 3

/** Readings 1 to 5 with 6 to 10 beside them, under the same headings again and with no title of their own. */
function goesOnBeside(one: FoundRun, other: FoundRun): boolean {
  const gap = other.left - one.right
  if (one.view !== other.view || one.view.turned || gap < 1 || gap > COLUMNS_BETWEEN) return false
  if (one.top !== other.top || one.row !== undefined || other.row !== undefined || one.test !== other.test)
    return false
  if (other.readings.length > one.readings.length) return false
  const named = directionOf(other)
  if (named !== undefined && named !== directionOf(one)) return false
  if ([one, other].some((run) => run.zeroBefore.length + run.zeroAfter.length > 0)) return false
  const [own, next] = [one, other].map(({ block }) => [block.pressure, ...block.carriers])
  const isSame =
    own?.length === next?.length &&
    next?.every(({ label }, index) => label.padded === own?.[index]?.label.padded) === true
  return isSame && !hasTitle(other, one) && isOneCurve(one, other)
}

/** Whether anything stands over a table that does not stand over the one beside it too. */
function hasTitle({ view, right, block }: FoundRun, one: FoundRun): boolean {
  const { top, first } = block.segment.head
  const shift = block.pressure.at - one.block.pressure.at
  for (let row = Math.max(0, top - TITLE_ROWS); row < first; row++)
    for (let column = one.right + 1; column <= right; column++) {
      const text = view.text(row, column)
      if (text !== undefined && text !== view.text(row, column - shift)) return true
    }
  return false
}

/** A title stands at most so many rows over the headings. */
const TITLE_ROWS = 3

/** The foot of a page may stand in the heading below it: "Page 1 of 2 | Pressure (Pa)". */
function isSameHead(one: FoundRun, other: FoundRun): boolean {
  const [own, next] = [one, other].map(({ block }) => [block.pressure, ...block.carriers])
  return (
    own?.length === next?.length &&
    next?.every(
      ({ at, label }, index) => at === own?.[index]?.at && label.padded.endsWith(own[index].label.padded),
    ) === true
  )
}

function namesDirection(one: FoundRun, other: FoundRun): boolean {
  for (let row = one.bottom + 1; row < other.top; row++)
    for (let column = Math.max(0, one.left - 1); column <= one.right; column++) {
      const text = one.view.text(row, column)
      if (text !== undefined && directionIn(readLabel(text))) return true
    }
  return false
}

const sizesOf = ({ readings }: FoundRun): number[] => readings.map(({ pressure }) => Math.abs(pressure.value))

const flowsOf = ({ readings }: FoundRun): number[] =>
  readings.map(({ carriers }) => carriers.reduce((sum, one) => sum + Math.abs(one?.value ?? 0), 0))

const together = (one: FoundRun, other: FoundRun): FoundRun => ({
  ...one,
  right: Math.max(one.right, other.right),
  bottom: Math.max(one.bottom, other.bottom),
  readings: [...one.readings, ...other.readings],
  zeroAfter: other.zeroAfter,
  block: {
    ...one.block,
    walked: {
      rows: [...one.block.walked.rows, ...other.block.walked.rows],
      leftOut: [...one.block.walked.leftOut, ...other.block.walked.leftOut],
      last: other.block.walked.last,
    },
  },
})
