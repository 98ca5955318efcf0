import { runText } from '../../../catalogue/findings/log/runs.js'
import type { Direction } from '../../../contract/record/index.js'
import { writtenAt } from '../tables/columns.js'
import type { FoundRun } from '../tables/runs.js'
import type { Draft } from './draft.js'

/** Pressures are logged to a tenth of a pascal, their difference is off by as much. */
const ROUNDING = 0.16

/**
 * Of two columns of pressures that differ by the zero flow throughout, one is measured and the other has it taken off: arithmetic
 * tells which, and nothing has to be asked.
 * @param zero - mean zero-flow pressure of the run as logged, unit of the pressures
 */
export function withMeasuredPressure(
  draft: Draft,
  run: FoundRun,
  direction: Direction | undefined,
  zero: number | undefined,
): FoundRun {
  const { block, view, readings } = run
  const doubt = block.doubts.find(({ about }) => about === 'pressure')
  const [chosen, other, third] = doubt?.columns ?? []
  if (!doubt || !chosen || !other || third || zero === undefined || Math.abs(zero) < ROUNDING) return run
  const sign = direction === 'depressurisation' ? -1 : direction === 'pressurisation' ? 1 : 0
  if (!readings.every(({ pressure }) => Math.sign(pressure.value) === sign)) return run
  const differences = readings.map(
    ({ row }) => (view.number(row, chosen.at) ?? Number.NaN) - (view.number(row, other.at) ?? Number.NaN),
  )
  const every = (expected: number) => differences.every((one) => Math.abs(one - expected) <= ROUNDING)
  const [measured, induced] = every(zero) ? [chosen, other] : every(-zero) ? [other, chosen] : []
  if (!measured || !induced) return run
  draft.tell(
    runText('log-measured-pressure', { measured: measured.headingCell, induced: induced.headingCell }),
    [measured.headingCell, induced.headingCell],
    'runs',
  )
  const ignored = [
    ...block.ignored.filter(({ column }) => column !== measured && column !== induced),
    {
      column: induced,
      why: 'the zero-flow pressure is already subtracted; the measured pressure was used',
    },
  ]
  return {
    ...run,
    readings: readings.map((row) => {
      const written = writtenAt(view, row.row, measured.at)
      return written ? { ...row, pressure: { ...written, cell: view.address(row.row, measured.at) } } : row
    }),
    block: { ...block, pressure: measured, ignored, doubts: block.doubts.filter((one) => one !== doubt) },
  }
}
