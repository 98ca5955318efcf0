import { toRecordUnit } from '../../cells/units.js'
import type { KnownColumn } from '../tables/columns.js'
import type { FoundRun } from '../tables/runs.js'
import type { Figure } from '../tables/table-row.js'
import { directionIn, says } from '../words/label.js'
import { LIKELY_MOST, type ZeroEntry } from './entry.js'
import { withNumbers } from './numbered.js'

/**
 * Zero-flow values in the rows of a run: in columns headed before and after, where several runs share a table, or in a column whose
 * heading says no more than "Baseline (Pa)". There one or two values are those before and after; of one in each row the mean is taken,
 * as where they are interpolated between the two.
 */
export function zeroColumns(runs: readonly FoundRun[]): ZeroEntry[] {
  const found = runs.flatMap((run) => {
    const { block, zeroBefore, zeroAfter } = run
    if (zeroBefore.length + zeroAfter.length > 0) return []
    const named = (['before', 'after'] as const).flatMap((which) =>
      block.segment.columns
        .filter(({ role }) => role === (which === 'before' ? 'zeroBefore' : 'zeroAfter'))
        .slice(0, 1)
        .flatMap((column) => entriesOf(run, column, which)),
    )
    if (named.length > 0) return named
    return block.segment.columns
      .filter(
        (column) =>
          isOfZeroFlow(column) &&
          (directionIn(column.label) ?? run.direction) === run.direction &&
          column !== block.pressure &&
          !block.carriers.includes(column),
      )
      .flatMap((column) => entriesOf(run, column))
      .slice(0, 2)
  })
  return withNumbers(found)
}

const isOfZeroFlow = ({ label, unit, role }: KnownColumn): boolean =>
  (role === 'pressure' || role === 'other' || role === 'derived') &&
  says(label, 'zero') &&
  !says(label, 'corrected') &&
  says(label, 'before') === says(label, 'after') &&
  (unit === undefined || unit.kind === 'pressure')

/** The rows of this run: of several in one table each has its own. */
const firstRowOf = ({ readings }: FoundRun): number => Math.min(...readings.map(({ row }) => row))

const lastRowOf = ({ readings }: FoundRun): number => Math.max(...readings.map(({ row }) => row))

function entriesOf(run: FoundRun, column: KnownColumn, which?: 'before' | 'after'): ZeroEntry[] {
  const { view } = run
  const figures: Figure[] = []
  for (let row = firstRowOf(run); row <= lastRowOf(run); row++) {
    const content = view.at(row, column.at)
    if (content?.kind === 'number') figures.push({ ...content.written, cell: view.address(row, column.at) })
  }
  const inPa = figures.map(({ value, unit }) => {
    const own = unit ?? column.unit
    return own?.kind === 'pressure' ? toRecordUnit(value, own) : value
  })
  const [first, second] = figures
  if (!first || inPa.some((value) => Math.abs(value) > LIKELY_MOST)) return []
  const base = {
    view,
    row: run.top,
    column: column.at,
    run,
    label: column.label.text,
    labelCell: column.headingCell,
    ...(column.unit ? { unit: column.unit } : {}),
  }
  if (which) return [{ ...base, which, figures }]
  return second && figures.length === 2
    ? [
        { ...base, which: 'before', inOrder: true, figures: [first] },
        { ...base, which: 'after', inOrder: true, figures: [second] },
      ]
    : [{ ...base, figures }]
}
