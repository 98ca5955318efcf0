import { columnReasons } from '../../../catalogue/findings/log/runs.js'
import { type KnownColumn, writtenAt } from '../tables/columns.js'
import type { FoundRun } from '../tables/runs.js'
import { says } from '../words/label.js'

/** Pressures are logged to a tenth of a pascal, their difference is off by as much. */
const ROUNDING = 0.11

/**
 * A table with a zero-flow pressure for each reading, measured or interpolated, and a column from which it is subtracted: there one
 * mean for all readings would be another correction, so the subtracted pressures are read.
 */
export function withZeroOfEach(run: FoundRun): FoundRun {
  const { block, view, readings } = run
  const { pressure, segment } = block
  if (pressure.role !== 'pressure' || run.row !== undefined) return run
  const zero = segment.columns.find(
    ({ label, unit, role }) =>
      says(label, 'zero') && role !== 'induced' && (unit === undefined || unit.kind === 'pressure'),
  )
  const net = segment.columns.find(({ role }) => role === 'induced')
  if (!zero || !net || zero === pressure) return run
  const value = (row: number, { at }: KnownColumn) => view.number(row, at) ?? Number.NaN
  const zeros = readings.map(({ row }) => value(row, zero))
  if (!zeros.some((one) => Math.abs(one - (zeros[0] as number)) > ROUNDING)) return run
  const isNet = readings.every(
    ({ row }) => Math.abs(value(row, pressure) - value(row, zero) - value(row, net)) <= ROUNDING,
  )
  if (!isNet) return run
  return {
    ...run,
    readings: readings.map((one) => {
      const written = writtenAt(view, one.row, net.at)
      return written ? { ...one, pressure: { ...written, cell: view.address(one.row, net.at) } } : one
    }),
    block: {
      ...block,
      pressure: net,
      ignored: [
        ...block.ignored.filter(({ column }) => column !== net && column !== zero),
        { column: pressure, why: columnReasons.zeroOfEach },
      ],
    },
  }
}
