import type { Block } from '../tables/choose.js'
import type { KnownColumn } from '../tables/columns.js'
import type { FoundRun } from '../tables/runs.js'
import type { Draft } from './draft.js'

/** Blocks without headings that are said to be no readings are left out, where others have headings. */
export function withoutRefused(draft: Draft, found: readonly FoundRun[]): readonly FoundRun[] {
  const headed = found.filter(({ block }) => block.unnamed.length === 0)
  if (draft.answers['table.columns'] !== 'no' || headed.length === 0) return found
  for (const { view, block, left, right, bottom } of found)
    if (block.unnamed.length > 0)
      draft.caution(
        'log-left-out',
        'left out, as answered: the numbers without headings',
        `${view.address(block.segment.head.first, left)}:${view.address(bottom, right).split('!').at(-1)}`,
        'runs',
      )
  return headed
}

/** Columns that no heading names are taken for what the curve says only where somebody agrees. */
export function askUnnamed(draft: Draft, runs: readonly FoundRun[]): void {
  const path = 'table.columns'
  const own = runs.filter((run) => run.block.unnamed.length > 0 && !everyCellSaysItself(run))
  if (own.length === 0) return
  const cells = own.flatMap(({ view, block }) =>
    block.unnamed.map(({ at }) => view.address(block.segment.head.first, at)),
  )
  const answer = draft.answers[path]
  if (answer === 'yes') {
    draft.caution('log-no-heading', 'the column has no heading; it was read as answered', cells, 'runs')
    return
  }
  if (answer === 'no') {
    draft.collector.refuse(
      'not-found',
      'write headings over the readings, as "Pressure (Pa)" and "Flow (m³/h)", and read the log again',
      cells[0],
      path,
    )
    return
  }
  const what = own
    .slice(0, 2)
    .map(
      ({ block }) =>
        `building pressure ${from(block, block.pressure)}, air flow ${block.carriers.map((one) => from(block, one)).join(' and ')}`,
    )
    .join('; ')
  draft.ask({
    path,
    text: `The readings have no headings. Are their columns: ${what}?`,
    cells,
    choices: [
      { value: 'yes', label: 'yes', reason: 'pressure and flow follow a leakage curve this way round' },
      { value: 'no', label: 'no' },
    ],
  })
}

/** "−55.3 Pa", "412 m³/h": a unit in every cell leaves no doubt about what it is. */
const everyCellSaysItself = ({ readings }: FoundRun): boolean =>
  readings.every(
    ({ pressure, carriers }) =>
      pressure.unit?.kind === 'pressure' && carriers.every((one) => one?.unit?.kind === 'flow'),
  )

const from = ({ segment }: Block, { at }: KnownColumn): string =>
  `from ${segment.view.address(segment.head.first, at).split('!').at(-1)} down`
