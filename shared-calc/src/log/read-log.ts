import { fileText } from '../catalogue/findings/log/file.js'
import { remarkFinding } from '../catalogue/findings/remark.js'
import type { Finding } from '../contract/record/index.js'
import type { Grid } from './grid/grid.js'
import { applyLayout, type ReadTest } from './layout/apply.js'
import { chooseLayout } from './layout/fingerprint.js'
import { savedLayout } from './layout/saved-with.js'
import type { Layout } from './layout/schema.js'
import { openLog } from './open-log.js'
import type { LogProblem } from './problem.js'
import { LogError, problem } from './problem.js'
import { type Proposal, propose } from './propose/propose.js'

export interface ReadOptions {
  /** The layout to use, whatever its fingerprint. */
  layout?: Layout
  /** Layouts to choose from by fingerprint. */
  layouts?: readonly Layout[]
  /** Use a proposed layout where none fits. Without it a proposal is only shown. */
  acceptProposal?: boolean
}

/** A log read: its tests, by which layout, and what stands in the way of others. */
export interface ReadLog {
  tests: ReadTest[]
  layoutUsed?: Layout
  /** Made where no layout fits: what was found, why, and what was not. */
  proposal?: Proposal
  /** Faults of all tests. */
  problems: LogProblem[]
}

/**
 * Reads a test log: bytes in, records with findings and cells out. Nothing is kept and nothing else is read.
 * @throws LogError when the file cannot be opened, or the layout does not suit it
 */
export function readLog(bytes: Uint8Array, fileName: string, options: ReadOptions = {}): ReadLog {
  const grid = openLog(bytes, fileName, options.layout?.decimal)
  const read = readGrid(grid, options)
  // A text file's decimal sign bears on its cells: a layout found by fingerprint may state another.
  const decimal = read.layoutUsed?.decimal
  return grid.kind === 'text' && decimal && decimal !== grid.decimal && !options.layout
    ? readGrid(openLog(bytes, fileName, decimal), options)
    : read
}

/** The same for cells that are already at hand: ranges of an open workbook, as the pane and `POST /v1/readings` have them. */
export function readGrid(
  grid: Grid,
  { layout, layouts = [], acceptProposal = false }: ReadOptions = {},
): ReadLog {
  const saved = layout ? undefined : savedLayout(grid)
  const known = layout ?? saved ?? chooseLayout(grid, layouts)
  if (known) {
    const why = layout ? 'given' : saved ? 'saved' : 'fits'
    const told = fileText('log-layout', { name: known.name, why })
    return finished(applyLayout(grid, known), { layoutUsed: known }, remarkFinding(told))
  }
  const proposal = propose(grid)
  if (!proposal.layout || !acceptProposal) return { tests: [], proposal, problems: [unconfirmed(proposal)] }
  const { confidence } = proposal
  return finished(
    applyLayout(grid, proposal.layout),
    { layoutUsed: proposal.layout, proposal },
    remarkFinding(fileText('log-proposal', { confidence })),
  )
}

function finished(tests: ReadTest[], more: Pick<ReadLog, 'layoutUsed' | 'proposal'>, told: Finding): ReadLog {
  return {
    tests: tests.map((test) => ({ ...test, findings: [told, ...test.findings] })),
    ...more,
    problems: tests.flatMap(({ problems }) => problems),
  }
}

function unconfirmed({ layout, notFound }: Proposal): LogProblem {
  const lacking = notFound.length > 0 ? `; not found: ${notFound.join(', ')}` : ''
  return problem(
    'no-layout',
    layout
      ? `no layout fits this log. One was proposed: check it and save it, or use --accept-proposal${lacking}`
      : `no layout fits this log, and none could be proposed${lacking}: describe the log in a layout file`,
  )
}

/** The tests of a log that must be whole. @throws LogError with every problem of it */
export function testsOf({
  tests,
  problems,
}: ReadLog): Required<Pick<ReadTest, 'record' | 'cells' | 'findings'>>[] {
  if (problems.length > 0) throw new LogError(problems)
  return tests.flatMap(({ record, cells, findings }) => (record ? [{ record, cells, findings }] : []))
}
