import { parseAddress, withoutSheet } from '../../grid/address.js'
import { mean } from '../../mean.js'
import type { FoundRun } from '../tables/runs.js'
import { readLabel } from '../words/label.js'
import { type Assigned, costOf, NOT_OF_IT } from './assign.js'
import { LIKELY_MOST, type ZeroEntry } from './entry.js'
import { isAbout } from './headings.js'

/** The value of a mean that is written with one decimal differs from it by this at most, Pa. */
const ROUNDED = 0.051

/** What is no zero flow of a run, with the run it is nearest to. */
export interface OtherZeroFlow {
  readonly entry: ZeroEntry
  readonly nearest: FoundRun | undefined
}

/**
 * Labelled zero flow that no run took, and that none of them has from elsewhere. Values no house has with the fan off are told apart:
 * they are named, not asked about.
 * @param known - values that are of another test for certain
 */
export function unusedZeroFlow(
  runs: readonly FoundRun[],
  found: readonly ZeroEntry[],
  known: readonly ZeroEntry[],
  assigned: Assigned,
): { likely: Map<FoundRun, ZeroEntry[]>; others: OtherZeroFlow[] } {
  const taken = runs.map((run) => {
    const { before, after } = assigned.get(run) ?? {}
    const own = [
      run.zeroBefore.length > 0 ? run.zeroBefore : before?.figures,
      run.zeroAfter.length > 0 ? run.zeroAfter : after?.figures,
    ]
    return own.flatMap((figures) => (figures && figures.length > 0 ? [figures] : []))
  })
  const figures = taken.flat(2)
  const cells = new Set(figures.map(({ cell }) => cell))
  const values = new Set(figures.map(({ value }) => value))
  const means = taken.flatMap((own) => {
    const each = own.flatMap((list) => mean(list.map(({ value }) => value)) ?? [])
    return [...each, mean(each) ?? []].flat()
  })
  // 1, 2, 3 … below a label of an empty form number its lines.
  const isCount = ({ figures: own }: ZeroEntry) =>
    own.length > 1 && own.every(({ value }, index) => value === index + 1)
  // "Mean | −1.2 | values | −1.5 | −0.9 | −1.2": what a value that was read is the mean of.
  const isMeant = (own: ZeroEntry['figures']) => {
    const whole = own.length > 2 ? mean(own.map(({ value }) => value)) : undefined
    return whole !== undefined && [...values].some((one) => Math.abs(one - whole) <= ROUNDED)
  }
  // "mini −1.8 | maxi −0.9 | moyenne −1.4": what a value read in the same line lies between.
  const lines = new Map(figures.map(({ cell, value }) => [lineOf(cell), value]))
  const isSpread = (own: ZeroEntry['figures']) => {
    const read = lines.get(lineOf(own[0]?.cell ?? ''))
    const size = own.map(({ value }) => value)
    return own.length === 2 && read !== undefined && Math.min(...size) < read && read < Math.max(...size)
  }
  const isKnown = ({ figures: own }: ZeroEntry) =>
    isMeant(own) ||
    isSpread(own) ||
    own.some(({ cell }) => cells.has(cell)) ||
    own.every(({ value }) => values.has(value) || means.some((one) => Math.abs(one - value) <= ROUNDED))
  // "Range of the zero flow" says how steady it was, where the zero flow itself is known.
  const hasOwn = (run: FoundRun) => taken[runs.indexOf(run)]?.length !== 0
  const likely = new Map<FoundRun, ZeroEntry[]>()
  const others: OtherZeroFlow[] = []
  const nearestTo = (entry: ZeroEntry) =>
    runs
      .map((run) => ({ run, cost: costOf(run, entry, runs) }))
      .filter(({ cost }) => cost < NOT_OF_IT)
      .sort((one, other) => one.cost - other.cost)[0]?.run
  for (const entry of known) others.push({ entry, nearest: nearestTo(entry) })
  for (const entry of found) {
    if (isCount(entry) || isKnown(entry)) continue
    const nearest = nearestTo(entry)
    // "Zero-flow limit | 5 Pa" is none; where the run has no other, its label is asked about.
    if (isAbout(entry.label) && nearest && !hasOwn(nearest)) continue
    if (
      isOfVentilation(entry) ||
      !nearest ||
      isAbout(entry.label) ||
      entry.figures.some(({ value }) => Math.abs(value) > LIKELY_MOST)
    )
      others.push({ entry, nearest })
    else likely.set(nearest, [...(likely.get(nearest) ?? []), entry])
  }
  return { likely, others }
}

/** Sheet and row of a cell. */
const lineOf = (cell: string): string =>
  `${cell.slice(0, cell.lastIndexOf('!') + 1)}${parseAddress(withoutSheet(cell))?.row}`

/** "Natural ventilation openings: 2". */
const isOfVentilation = ({ label, unit }: ZeroEntry): boolean =>
  unit === undefined &&
  readLabel(label).tokens.some((token) => /^(?:ventila|luftung|lueftung|aera)/.test(token))
