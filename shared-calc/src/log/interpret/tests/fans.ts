import { TOGETHER } from '../tables/choose.js'
import type { FoundRun } from '../tables/runs.js'
import type { TableRow } from '../tables/table-row.js'
import { readLabel, says } from '../words/label.js'
import { directionOf } from './test-group.js'

/** Path of the answer: whether tables of several fans belong together. */
export const FANS = 'fans'

const FEWEST = 4
/** Two gauges at one house differ by a few per cent. */
const NEAR = 0.03

export interface Joined {
  readonly run: FoundRun
  /** The tables it was made of. */
  readonly parts: readonly FoundRun[]
  /** Every pressure is the same in all of them: nothing is left to ask. */
  readonly isCertain: boolean
}

/**
 * Tables titled "Fan 1" and "Fan 2" with the same pressures are fans that ran at the same time, a table each: their flows are put
 * together. Where the pressures only nearly agree, it is asked.
 */
export function joinFans(
  runs: readonly FoundRun[],
  answer: string | undefined,
): { runs: FoundRun[]; joined: Joined[] } {
  const joined: Joined[] = []
  if (answer === 'separate') return { runs: [...runs], joined }
  const kept: FoundRun[] = []
  const fans = new Map(runs.map((run) => [run, fanOf(run)]))
  for (const run of runs) {
    const isOther = (one: FoundRun) => isOtherFan(one, run, fans)
    // Without a direction of its own it is of the run it stands below.
    const at = directionOf(run) ? kept.findIndex(isOther) : kept.findLastIndex(isOther)
    const first = kept[at]
    if (!first) {
      kept.push(run)
      continue
    }
    const both = together(first, run)
    const known = joined.findIndex((one) => one.run === first)
    const earlier = joined[known]
    const parts = [...(earlier?.parts ?? [first]), run]
    const isCertain = (earlier?.isCertain ?? true) && farthest(first, run) === 0
    if (known >= 0) joined.splice(known, 1)
    joined.push({ run: both, parts, isCertain })
    kept[at] = both
    fans.set(both, fans.get(first))
  }
  return { runs: kept, joined }
}

export const isTogether = (answer: string | undefined): boolean => answer === TOGETHER

function isOtherFan(
  one: FoundRun,
  other: FoundRun,
  fans: ReadonlyMap<FoundRun, string | undefined>,
): boolean {
  if (one.readings.length < FEWEST || one.readings.length !== other.readings.length) return false
  if (one.row !== undefined || other.row !== undefined || one.hidden !== other.hidden) return false
  if (directionOf(one) !== (directionOf(other) ?? directionOf(one))) return false
  const [first, second] = [fans.get(one), fans.get(other)]
  const kinds = [one, other].map(({ block }) => block.carriers[0]?.role === 'device')
  return (
    first !== undefined &&
    second !== undefined &&
    first !== second &&
    kinds[0] === kinds[1] &&
    farthest(one, other) <= NEAR
  )
}

/** Share by which two pressures of a station differ at most. */
const farthest = (one: FoundRun, other: FoundRun): number =>
  Math.max(
    ...one.readings.map(({ pressure }, index) =>
      Math.abs((other.readings[index]?.pressure.value ?? 0) / pressure.value - 1),
    ),
  )

const TITLE_ROWS = 4

/** The number or letter of the fan that the headings of a table, a title over it or its sheet name. */
function fanOf({ view, block, left, right, top }: FoundRun): string | undefined {
  const texts = block.carriers.map(({ label }) => label.text)
  for (let row = top; row >= Math.max(0, top - TITLE_ROWS); row--)
    for (let column = left; column <= right; column++) texts.push(view.text(row, column) ?? '')
  for (const text of [...texts, view.name]) {
    if (text.length > 40) continue
    const label = readLabel(text)
    const mark = label.tokens
      .map((token) => /^(?:\D{2,12})?([1-9]|[abc])$/.exec(token)?.[1])
      .find((one) => one)
    if (mark && says(label, 'device') && !says(label, 'range')) return mark
  }
  return undefined
}

/** One run with the flows of both; units that differ go with each figure. */
function together(one: FoundRun, other: FoundRun): FoundRun {
  const unit = other.block.carriers[0]?.unit
  const readings = one.readings.map((row, index): TableRow => {
    const more = other.readings[index] as TableRow
    const carriers = more.carriers.map((figure) => figure && { ...(unit ? { unit } : {}), ...figure })
    return {
      ...row,
      carriers: [...row.carriers, ...carriers],
      ranges: [...padded(row), ...padded(more)],
    }
  })
  const { block } = one
  return {
    ...one,
    readings,
    block: {
      ...block,
      carriers: [...block.carriers, ...other.block.carriers],
      ranges: [...block.ranges, ...other.block.ranges],
    },
  }
}

/** A place for the range of each carrier. */
const padded = ({ carriers, ranges }: TableRow) => carriers.map((_, index) => ranges[index])
