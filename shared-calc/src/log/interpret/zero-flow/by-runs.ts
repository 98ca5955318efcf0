import { addressOf, withoutSheet } from '../../grid/address.js'
import { placeInSheet } from '../grid/lines.js'
import { placeIn } from '../grid/view.js'
import type { FoundRun } from '../tables/runs.js'
import type { ZeroEntry } from './entry.js'

/** What a list may call the houses of a log, with their runs. */
export type Houses = ReadonlyMap<string, readonly FoundRun[]>

/**
 * Entries of several values parted by what they belong to: tests of a list, houses named in the rows of a list, houses side by side, or the two runs
 * of a log in their order.
 */
export function byRunsOf(
  found: readonly ZeroEntry[],
  runs: readonly FoundRun[],
  houses: Houses,
): ZeroEntry[] {
  const tests = new Set(runs.flatMap(({ test }) => test ?? []))
  return found
    .flatMap((entry) => byTest(entry, tests))
    .flatMap((entry) => byNamedRow(entry, houses))
    .flatMap((entry) => byHouse(entry, runs) ?? byRun(entry, runs))
}

/** Two values that differ by more than two readings of one zero flow do belong to two runs. */
const APART = 0.5

/** Values above the flows of several houses that share their pressures: each is of the house below it. */
function byHouse(entry: ZeroEntry, runs: readonly FoundRun[]): ZeroEntry[] | undefined {
  const placed = entry.figures.map((figure) => {
    const column = placeIn(entry.view, figure.cell)?.column
    const own = runs.filter(
      ({ view, houseColumn }) =>
        view.name === entry.view.name && houseColumn !== undefined && houseColumn === column,
    )
    return { figure, own }
  })
  // A value alone stands in the first column and is of all of them.
  if (placed.length < 2 || placed.some(({ own }) => own.length === 0)) return undefined
  return placed.flatMap(({ figure, own }) => own.map((run) => ({ ...entry, figures: [figure], run })))
}

/** "Zero before | −1.2 | 0.8" without headings, in a log of two runs: one value each, in the order of the runs. */
function byRun(entry: ZeroEntry, runs: readonly FoundRun[]): ZeroEntry[] {
  const [first, second] = entry.figures
  const own = runs.filter(({ view }) => view.name === entry.view.name)
  if (!first || !second || entry.figures.length !== 2 || !entry.which || entry.inOrder || entry.direction)
    return [entry]
  const [one, other] = [...own].sort((a, b) => a.top - b.top || a.left - b.left)
  if (!one || !other || own.length !== 2 || Math.abs(first.value - second.value) <= APART) return [entry]
  return [
    { ...entry, figures: [first], byOrder: true, run: one },
    { ...entry, figures: [second], byOrder: true, run: other },
  ]
}

/** A column of zero-flow values in a list of tests: each belongs to the test its row names. */
function byTest(entry: ZeroEntry, tests: ReadonlySet<string>): ZeroEntry[] {
  if (entry.figures.length < 2 || tests.size < 2) return [entry]
  const named = entry.figures.map((figure) => {
    const row = placeIn(entry.view, figure.cell)?.row
    const test = row === undefined ? undefined : namesIn(entry, row).find((name) => tests.has(name))
    return { figure, test }
  })
  if (named.some(({ test }) => test === undefined)) return [entry]
  return named.map(({ figure, test }) => ({ ...entry, figures: [figure], test: test as string }))
}

/** A column of zero-flow values in a list with a row for each house: its sheet, its building or its test names the row. */
function byNamedRow(entry: ZeroEntry, houses: Houses): ZeroEntry[] {
  if (houses.size < 2 || entry.test !== undefined || (entry.figures.length < 2 && entry.direction))
    return [entry]
  const own = entry.figures.map((figure) => {
    const row = placeIn(entry.view, figure.cell)?.row ?? entry.row
    const name = namesIn(entry, row).find((one) => houses.has(one))
    return { figure, row, runs: name === undefined ? undefined : houses.get(name) }
  })
  if (own.some(({ runs }) => runs === undefined)) return [entry]
  return own.map(({ figure, row, runs }) => ({ ...entry, row, figures: [figure], ofHouse: runs ?? [] }))
}

/** The first few texts and numbers of a row, without the values themselves: one of 1 Pa does not name test 1. */
function namesIn({ view, figures }: ZeroEntry, row: number): string[] {
  const values = new Set(figures.map(({ cell }) => withoutSheet(cell)))
  return Array.from({ length: 4 }, (_, column) => column).flatMap((column) => {
    const place = placeInSheet(view.lines, row, column)
    const cell = values.has(addressOf(place.row, place.column))
      ? undefined
      : view.sheet.at(place.row, place.column)
    return cell && cell.kind !== 'error' ? [String(cell.value).trim()] : []
  })
}
