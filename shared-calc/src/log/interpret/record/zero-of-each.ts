import { columnReasons } from '../../../catalogue/findings/log/runs.js'
import { type KnownColumn, writtenAt } from '../tables/columns.js'
import type { FoundRun } from '../tables/runs.js'
import { says } from '../words/label.js'
import { LIKELY_MOST } from '../zero-flow/entry.js'

/** Pressures are logged to a tenth of a pascal, their difference is off by as much. */
const ROUNDING = 0.11

/**
 * A table with the measured pressures and those without zero flow. Where each reading has a zero flow of its own, measured or
 * interpolated, one mean for all would be another correction; where the log has no other zero flow, the measured pressures would not
 * be corrected at all. In both cases the subtracted pressures are read.
 * @param hasZero - zero-flow pressures were found for this run
 */
export function withZeroOfEach(run: FoundRun, hasZero: boolean): FoundRun {
  const { block, readings } = run
  const { pressure, segment } = block
  const net = segment.columns.find(({ role }) => role === 'induced')
  if (pressure.role !== 'pressure' || run.row !== undefined || !net || readings.length < 3) return run
  const values = (column: KnownColumn) =>
    readings.map(({ row }) => run.view.number(row, column.at) ?? Number.NaN)
  const after = values(net)
  const taken = values(pressure).map((value, index) => value - (after[index] as number))
  if (!taken.every((one) => Math.abs(one) <= LIKELY_MOST)) return run
  const zero = segment.columns.find(
    (column) =>
      column !== pressure &&
      column !== net &&
      says(column.label, 'zero') &&
      values(column).every((one, index) => Math.abs(one - (taken[index] as number)) <= ROUNDING),
  )
  const isOwn = zero !== undefined && spread(values(zero)) > ROUNDING
  if (!isOwn && hasZero) return run
  return {
    ...run,
    readings: readings.map((one) => {
      const written = writtenAt(run.view, one.row, net.at)
      return written ? { ...one, pressure: { ...written, cell: run.view.address(one.row, net.at) } } : one
    }),
    block: {
      ...block,
      pressure: net,
      ignored: [
        ...block.ignored.filter(({ column }) => column !== net && column !== zero),
        { column: pressure, why: isOwn ? columnReasons.zeroOfEach : columnReasons.noZero },
      ],
    },
  }
}

const spread = (values: readonly number[]): number => Math.max(...values) - Math.min(...values)
