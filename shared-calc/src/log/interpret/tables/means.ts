import { rowReasons } from '../../../catalogue/findings/log/runs.js'
import type { LeftOut, TableRow } from './table-row.js'

/** A last row that is the mean or the sum of the others in pressure and in flow is no reading, whether it says so or not. */
export function withoutMeans(rows: readonly TableRow[], leftOut: LeftOut[]): TableRow[] {
  const readings = rows.filter(({ kind }) => kind === 'reading')
  const last = readings.at(-1)
  const flow = last?.carriers[0]?.value
  const all = readings
    .slice(0, -1)
    .filter((row) => row.direction === last?.direction && row.test === last?.test)
  const certain = all.filter(({ doubt }) => doubt === undefined)
  if (!last || flow === undefined || all.length < 4) return [...rows]
  // Among readings at one station any may be near the mean.
  const sizes = all.map(({ pressure }) => Math.abs(pressure.value))
  if (Math.max(...sizes) < 1.2 * Math.min(...sizes)) return [...rows]
  const sums = [all, certain].some((others) => isMean(last, flow, others, others.length))
  if (!sums && !isMean(last, flow, all) && !isMean(last, flow, certain)) return [...rows]
  leftOut.push({ cell: last.pressure.cell, why: sums ? rowReasons.sum : rowReasons.mean })
  return rows.filter((row) => row !== last)
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
