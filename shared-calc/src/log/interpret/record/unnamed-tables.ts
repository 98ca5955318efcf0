import { runText } from '../../../catalogue/findings/log/runs.js'
import { questions } from '../../../catalogue/questions.js'
import { blockBetween } from '../../grid/address.js'
import type { Block } from '../tables/choose.js'
import type { KnownColumn } from '../tables/columns.js'
import type { FoundRun } from '../tables/runs.js'
import type { Draft } from './draft.js'
import { resultOver } from './result-over.js'

/** Blocks without headings that are said to be no readings are left out, where others have headings. */
export function withoutRefused(draft: Draft, found: readonly FoundRun[]): readonly FoundRun[] {
  const headed = found.filter(({ block }) => block.unnamed.length === 0)
  if (draft.answers['table.columns'] !== 'no' || headed.length === 0) return found
  for (const { view, block, left, right, bottom } of found)
    if (block.unnamed.length > 0)
      draft.tell(
        runText('log-left-out/unnamed'),
        blockBetween(view.address(block.segment.head.first, left), view.address(bottom, right)),
        'runs',
      )
  return headed
}

/** Columns that no heading names are taken for what the curve says only where somebody agrees. */
export function askUnnamed(draft: Draft, runs: readonly FoundRun[]): void {
  const path = 'table.columns'
  const own = runs.filter((run) => run.block.unnamed.length > 0 && !everyCellSaysItself(run))
  if (own.length === 0) return
  // Refused with its unit.
  if (own.some(({ block }) => block.carriers.some((one) => resultOver(block, one)))) return
  const cells = own.flatMap(({ view, block }) =>
    block.unnamed.map(({ at }) => view.address(block.segment.head.first, at)),
  )
  const answer = draft.answers[path]
  if (answer === 'yes') {
    draft.tell(runText('log-no-heading'), cells, 'runs')
    return
  }
  if (answer === 'no') {
    draft.collector.refuse(
      'not-found',
      'write headings above the readings, such as "Pressure (Pa)" and "Flow (m³/h)", and read the log again',
      cells[0],
      path,
    )
    return
  }
  const tables = own.slice(0, 2).map(({ block }) => ({
    pressure: start(block, block.pressure),
    flows: block.carriers.map((one) => start(block, one)),
  }))
  draft.ask({ path, cells, ...questions.unnamedColumns({ tables }) })
}

/** "−55.3 Pa", "412 m³/h": a unit in every cell leaves no doubt about what it is. */
const everyCellSaysItself = ({ readings }: FoundRun): boolean =>
  readings.every(
    ({ pressure, carriers }) =>
      pressure.unit?.kind === 'pressure' && carriers.every((one) => one?.unit?.kind === 'flow'),
  )

const start = ({ segment }: Block, { at }: KnownColumn): string =>
  segment.view.address(segment.head.first, at)
