import type { FoundRun } from '../tables/runs.js'
import { directionOf } from '../tests/test-group.js'
import { readLabel } from '../words/label.js'
import { byRunsOf, type Houses } from './by-runs.js'
import type { ZeroEntry } from './entry.js'
import { isAlike, placeOf } from './place.js'

/** The zero-flow values each run takes by their labels. */
export type Assigned = ReadonlyMap<FoundRun, { before?: ZeroEntry; after?: ZeroEntry; shared: boolean }>

/** Which entry each run takes, nearest first; one that has none left shares the nearest. */
export function assignZeroFlow(
  runs: readonly FoundRun[],
  found: readonly ZeroEntry[],
  houses: Houses,
): Map<FoundRun, { before?: ZeroEntry; after?: ZeroEntry; shared: boolean }> {
  const entries = byRunsOf(
    found.filter((entry) => !entry.between),
    runs,
    houses,
  )
  const taken = new Map<FoundRun, { before?: ZeroEntry; after?: ZeroEntry; shared: boolean }>()
  for (const run of runs) taken.set(run, { shared: false })
  const left: { run: FoundRun; entry: ZeroEntry; which: 'before' | 'after' }[] = []
  for (const which of ['before', 'after'] as const) {
    const own = entries.filter((entry) => (entry.which ?? 'before') === which)
    const places = placesOf(own, runs)
    // "Zero flow, mean" behind those before and after is their mean, and neither of them.
    const isNamed = own.some((entry) => entry.which !== undefined)
    const unnamed = (entry: ZeroEntry) => (isNamed && entry.which === undefined ? UNNAMED : 0)
    const cost = (run: FoundRun, entry: ZeroEntry) =>
      costOf(run, entry, runs) + places.against(run, entry) + unnamed(entry)
    const pairs = runs
      .filter((run) => (which === 'before' ? run.zeroBefore : run.zeroAfter).length === 0)
      .flatMap((run) => own.map((entry) => ({ run, entry, cost: cost(run, entry) })))
      .filter(({ cost }) => cost < NOT_OF_IT)
      .sort((a, b) => a.cost - b.cost)
    const used = new Set<ZeroEntry>()
    for (const { run, entry } of pairs) {
      const state = taken.get(run)
      if (!state || state[which] || used.has(entry)) continue
      state[which] = entry
      used.add(entry)
    }
    keepOrder(runs, taken, which, cost)
    left.push(...pairs.map((pair) => ({ ...pair, which })))
  }
  // One with zero flow of its own before or after its readings shares none.
  const without = runs.filter((run) => {
    const { before, after } = taken.get(run) ?? {}
    return !before && !after && run.zeroBefore.length + run.zeroAfter.length === 0
  })
  for (const { run, entry, which } of left) {
    const state = taken.get(run)
    if (!state || state[which] || !without.includes(run) || !isShared(run, entry, runs, taken)) continue
    state[which] = entry
    state.shared = true
  }
  between(taken, entries, runs)
  around(taken, entries, runs)
  saidBetween(
    taken,
    found.filter((entry) => entry.between),
    runs,
  )
  for (const [run, state] of taken) pairUp(run, state, entries, runs)
  return taken
}

/** One value before all runs and one after all of them, one run below the other, without a direction: each run lies between the two and takes both. */
function around(
  taken: Map<FoundRun, { before?: ZeroEntry; after?: ZeroEntry; shared: boolean }>,
  entries: readonly ZeroEntry[],
  runs: readonly FoundRun[],
): void {
  const [before, ...more] = entries.filter(({ which }) => which === 'before')
  const [after, ...others] = entries.filter(({ which }) => which === 'after')
  if (!before || !after || runs.length < 2 || entries.length > 2 || more.length + others.length > 0) return
  if ([before, after].some(({ direction, test, run }) => direction || test || run)) return
  const isInside = runs.every(
    ({ view, top, bottom, zeroBefore, zeroAfter }, index) =>
      !view.turned &&
      (runs[index - 1]?.bottom ?? -1) < top &&
      view.name === before.view.name &&
      view.name === after.view.name &&
      before.row < top &&
      after.row > bottom &&
      zeroBefore.length + zeroAfter.length === 0,
  )
  if (isInside) for (const run of runs) taken.set(run, { before, after, shared: true })
}

/**
 * Whether zero flow that another run has is this one's too: not that of the same direction in another test, not what heads a later
 * test below, and not one of two of which the other is the other run's for certain.
 */
function isShared(run: FoundRun, entry: ZeroEntry, runs: readonly FoundRun[], taken: Assigned): boolean {
  const owner = runs.find((one) => taken.get(one)?.before === entry || taken.get(one)?.after === entry)
  if (!owner || owner === run) return true
  if (entry.direction && directionOf(owner) === directionOf(run)) return false
  const isOfLater = runs.some(
    (one) =>
      directionOf(one) === directionOf(run) &&
      [one.view.name, entry.view.name].every((name) => name === run.view.name) &&
      [one, run].every(({ view }) => !view.turned) &&
      one.top > run.bottom &&
      entry.row > run.bottom &&
      entry.row < one.bottom,
  )
  if (isOfLater) return false
  const { before, after } = taken.get(owner) ?? {}
  return [before, after].every((one) => !one || costOf(run, one, runs) < NOT_OF_IT)
}

/** Zero flow between two runs one below the other ends the upper and begins the lower, where neither has one of its own there. */
function between(
  taken: Map<FoundRun, { before?: ZeroEntry; after?: ZeroEntry; shared: boolean }>,
  entries: readonly ZeroEntry[],
  runs: readonly FoundRun[],
): void {
  for (const [index, lower] of runs.entries()) {
    const upper = runs[index - 1]
    if (!upper || upper.view.name !== lower.view.name || upper.view.turned || upper.bottom >= lower.top)
      continue
    const inside = entries.filter(
      ({ view, row }) => view.name === upper.view.name && row > upper.bottom && row < lower.top,
    )
    const [entry] = inside
    const [above, below] = [taken.get(upper), taken.get(lower)]
    if (!entry || inside.length > 1 || entry.which || entry.direction || entry.inOrder || !above || !below)
      continue
    if (upper.zeroAfter.length > 0 || below.before !== entry || !above.before || above.before === entry)
      continue
    // Each run has one over it, at the same place: none is between.
    if (!below.after && isAlike(placeOf(upper, above.before), placeOf(lower, entry))) continue
    above.after = { ...entry, which: 'after' }
    below.before = { ...entry, which: 'before' }
    above.shared = false
    below.shared = false
  }
}

/** "At start −1.6, between the runs −1.1, at end −0.7": what its label puts between the two runs of a log ends the first and begins the second. */
function saidBetween(
  taken: Map<FoundRun, { before?: ZeroEntry; after?: ZeroEntry; shared: boolean }>,
  entries: readonly ZeroEntry[],
  runs: readonly FoundRun[],
): void {
  const [entry, ...more] = entries
  const [first, second, ...others] = runs
  if (!entry || !first || !second || more.length + others.length > 0) return
  const [above, below] = [taken.get(first), taken.get(second)]
  if (!above || !below) return
  const last = below.after ?? above.after
  above.after = { ...entry, which: 'after' }
  below.before = { ...entry, which: 'before' }
  if (last) below.after = last
  above.shared = false
  below.shared = false
}

/**
 * Two values by the same words and without one for before or after, "zero | −1.2" above the readings and below: the first is taken as
 * before, the other as after. Their mean is the same either way.
 */
function pairUp(
  run: FoundRun,
  state: { before?: ZeroEntry; after?: ZeroEntry },
  entries: readonly ZeroEntry[],
  runs: readonly FoundRun[],
): void {
  const { before } = state
  const below = run.zeroBefore.length > 0 && run.zeroAfter.length === 0 && !state.after
  if (below) {
    // The first row of the table is zero flow; the same word below the readings is that after them.
    const own = entries.filter(
      (entry) => entry.which === undefined && entry.figures.length === 1 && isBelow(run, entry, runs),
    )
    if (own.length === 1) state.after = { ...(own[0] as ZeroEntry), which: 'after' }
    return
  }
  if (!before || before.which || state.after || before.figures.length > 1) return
  const others = entries.filter(
    (entry) =>
      entry !== before &&
      entry.which === undefined &&
      entry.figures.length === 1 &&
      entry.figures[0]?.cell !== before.figures[0]?.cell &&
      wordsOnly(entry) === wordsOnly(before) &&
      runs.every((one) => one === run || costOf(one, entry, runs) > costOf(run, entry, runs)),
  )
  const [other] = others
  if (!other || others.length > 1) return
  const [first, second] = [before, other].sort((a, b) => a.row - b.row || a.column - b.column)
  state.before = { ...(first as ZeroEntry), which: 'before', inOrder: true }
  state.after = { ...(second as ZeroEntry), which: 'after', inOrder: true }
}

const isBelow = (run: FoundRun, entry: ZeroEntry, runs: readonly FoundRun[]): boolean =>
  !run.view.turned &&
  entry.view.name === run.view.name &&
  entry.row > run.bottom &&
  !entry.direction &&
  runs.every((one) => one === run || costOf(one, entry, runs) > costOf(run, entry, runs)) &&
  costOf(run, entry, runs) < 30

/** The words of a label without figures and single letters. */
const wordsOnly = ({ label }: ZeroEntry): string =>
  readLabel(label)
    .tokens.filter((token) => /^\p{L}{3,}$/u.test(token))
    .join(' ')

/**
 * Of runs one below the other, zero flow stands above each or below each: where none is above the first run, one between two
 * runs belongs to the upper, and where none is below the last, to the lower.
 */
function placesOf(
  entries: readonly ZeroEntry[],
  runs: readonly FoundRun[],
): { against(run: FoundRun, entry: ZeroEntry): number } {
  const sheets = new Map<string, { above: boolean; below: boolean }>()
  for (const name of new Set(runs.map(({ view }) => view.name))) {
    const own = runs.filter(({ view }) => view.name === name && !view.turned)
    const rows = entries.filter(({ view }) => view.name === name).map(({ row }) => row)
    const [top, bottom] = [Math.min(...own.map((run) => run.top)), Math.max(...own.map((run) => run.bottom))]
    if (own.length > 1)
      sheets.set(name, { above: rows.some((row) => row < top), below: rows.some((row) => row > bottom) })
  }
  return {
    against(run, entry) {
      const place = entry.view.name === run.view.name ? sheets.get(run.view.name) : undefined
      if (!place || place.above === place.below) return 0
      const wrong = place.above ? entry.row > run.bottom : entry.row < run.top
      return wrong ? WRONG_SIDE : 0
    },
  }
}

/**
 * Values that stand beyond all runs keep the order of the runs: the run nearest to them would take the nearest, and leave its own
 * to the other. Of two ways to give them, that with the smaller sum of squared costs crosses nothing.
 */
function keepOrder(
  runs: readonly FoundRun[],
  taken: ReadonlyMap<FoundRun, { before?: ZeroEntry; after?: ZeroEntry }>,
  which: 'before' | 'after',
  cost: (run: FoundRun, entry: ZeroEntry) => number,
): void {
  for (const [index, run] of runs.entries())
    for (const other of runs.slice(index + 1)) {
      const [one, two] = [taken.get(run), taken.get(other)]
      const [mine, theirs] = [one?.[which], two?.[which]]
      if (!one || !two || !mine || !theirs) continue
      const crossed = [cost(run, theirs), cost(other, mine)]
      const sum = (costs: readonly number[]) => costs.reduce((all, each) => all + each ** 2, 0)
      if (crossed.some((each) => each >= NOT_OF_IT)) continue
      if (sum(crossed) > sum([cost(run, mine), cost(other, theirs)]) - NO_DIFFERENCE) continue
      one[which] = { ...theirs, byOrder: true }
      two[which] = { ...mine, byOrder: true }
    }
}

/** Cost from which an entry is of another run or test for certain. */
export const NOT_OF_IT = 5000
const NO_DIFFERENCE = 1
const WRONG_SIDE = 60
const UNNAMED = 30

const hasOwner = ({ view, direction }: ZeroEntry, runs: readonly FoundRun[]): boolean =>
  runs.some((one) => one.view.name === view.name && directionOf(one) === direction)

export function costOf(run: FoundRun, entry: ZeroEntry, runs: readonly FoundRun[]): number {
  if (entry.test !== undefined && entry.test !== run.test) return 9999
  if (entry.run !== undefined && entry.run !== run) return 9999
  if (entry.ofHouse && !entry.ofHouse.includes(run)) return 9999
  const direction = directionOf(run)
  if (entry.direction && direction && entry.direction !== direction) return 9999
  // A table without a direction leaves it to the run that has the one named.
  if (entry.direction && !direction && hasOwner(entry, runs)) return 9999
  const [row, column] = run.view.turned ? [entry.column, entry.row] : [entry.row, entry.column]
  const { top, bottom, left, right } = run
  const otherSheet = entry.view.name !== run.view.name
  if (otherSheet) {
    const beside = runs.filter((one) => one.view.name === entry.view.name)
    // The sheet of the first run may hold the zero flow of both.
    const isOfBoth =
      runs.length === 2 &&
      entry.direction !== undefined &&
      beside.every((one) => directionOf(one) !== entry.direction)
    if (beside.length > 0 && !isOfBoth) return 9999
    return 500 + runs.indexOf(run)
  }
  const apart = column < left - 1 ? left - 1 - column : column > right ? column - right : 0
  const away = row < top ? top - row : row > bottom ? row - bottom + 1 : 0
  const between = runs.some(
    (one) =>
      one !== run &&
      one.view.name === run.view.name &&
      one.left <= right &&
      one.right >= left &&
      ((row < one.top && one.bottom < top) || (row > one.bottom && one.top > bottom)),
  )
  return apart * 100 + away + (between ? 1000 : 0) + runs.indexOf(run) * 0.01
}
