import { columnReasons } from '../../../catalogue/findings/log/runs.js'
import { writtenAt } from '../tables/columns.js'
import type { FoundRun } from '../tables/runs.js'
import { LIKELY_MOST, type ZeroEntry } from './entry.js'

/**
 * "Z0 | Z1" in a list with one line a run: small pressures that no flow stands beside, under headings nobody knows. They may be the zero
 * flow, and are asked about: before and after by turns.
 */
export function unpairedPressures(run: FoundRun): ZeroEntry[] {
  const { view, row, block } = run
  if (row === undefined) return []
  const own = block.ignored.flatMap(({ column, why }) => {
    const written = why === columnReasons.unpaired ? writtenAt(view, row, column.at) : undefined
    const isSmall = written !== undefined && Math.abs(written.value) <= LIKELY_MOST
    return isSmall && column.role === 'pressure' ? [{ column, written }] : []
  })
  return own.map(({ column, written }, index): ZeroEntry => {
    const { at, unit, label, headingCell } = column
    return {
      view,
      row,
      column: at,
      run,
      which: index % 2 === 0 ? 'before' : 'after',
      figures: [{ ...(unit ? { unit } : {}), ...written, cell: view.address(row, at) }],
      label: label.text,
      labelCell: headingCell,
    }
  })
}
