import { rowReasons } from '../../../catalogue/findings/log/runs.js'
import type { LeftOut, TableRow } from './table-row.js'

/** Sums and means below one another at most. */
const MOST_BELOW = 3

/** Last rows that are the mean or the sum of the others in pressure and in flow are no readings, whether they say so or not. */
export function withoutMeans(rows: readonly TableRow[], leftOut: LeftOut[]): TableRow[] {
  const readings = rows.filter(({ kind }) => kind === 'reading')
  for (let count = MOST_BELOW; count > 0; count--) {
    const below = readings.slice(-count)
    const kinds = below.map((row) => kindOf(row, readings.slice(0, -count)))
    if (!kinds.every((kind) => kind !== undefined)) continue
    for (const [index, kind] of kinds.entries())
      leftOut.push({ cell: (below[index] as TableRow).pressure.cell, why: rowReasons[kind] })
    return rows.filter((row) => !below.includes(row))
  }
  return [...rows]
}

/** What a row below the readings sums them up as. */
function kindOf(last: TableRow, before: readonly TableRow[]): 'sum' | 'mean' | undefined {
  const flow = last.carriers[0]?.value
  const all = before.filter((row) => row.direction === last.direction && row.test === last.test)
  const certain = all.filter(({ doubt }) => doubt === undefined)
  if (flow === undefined || all.length < 4) return undefined
  // Among readings at one station any may be near the mean.
  const sizes = all.map(({ pressure }) => Math.abs(pressure.value))
  if (Math.max(...sizes) < 1.2 * Math.min(...sizes)) return undefined
  if ([all, certain].some((others) => isMean(last, flow, others, others.length))) return 'sum'
  return [all, certain].some((others) => isMean(last, flow, others)) ? 'mean' : undefined
}

/** @param times - by what the mean is multiplied: their number makes it the sum */
function isMean(last: TableRow, flow: number, others: readonly TableRow[], times = 1): boolean {
  if (others.length === 0) return false
  const mean = (of: (row: TableRow) => number) =>
    (others.reduce((sum, row) => sum + of(row), 0) * times) / others.length
  const near = (one: number, other: number) => Math.abs(one / other - 1) < 0.006
  return (
    near(
      last.pressure.value,
      mean((row) => row.pressure.value),
    ) &&
    near(
      flow,
      mean((row) => row.carriers[0]?.value ?? 0),
    )
  )
}
