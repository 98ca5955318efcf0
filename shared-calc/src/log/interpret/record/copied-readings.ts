import { runText } from '../../../catalogue/findings/log/runs.js'
import { questions } from '../../../catalogue/questions.js'
import type { FoundRun } from '../tables/runs.js'
import type { Copy } from '../tests/copies.js'
import type { Draft } from './draft.js'

const PATH = 'readings.copied'
const LEAVE_OUT = 'leave out'
const READ = 'read'

/**
 * A sheet of one house with the very readings of another: two houses never leak alike to the last digit, so that they were left over from
 * the sheet that was copied, or typed into the wrong one. They are asked about, and left out or read as the answer says.
 */
export function withoutCopied(
  draft: Draft,
  runs: readonly FoundRun[],
  copied: readonly Copy[],
): readonly FoundRun[] {
  const own = copied.filter(({ run }) => runs.includes(run))
  if (own.length === 0) return runs
  const cellOf = ({ block }: FoundRun) => block.pressure.headingCell
  const answer = draft.answers[PATH]
  if (answer === LEAVE_OUT && own.length < runs.length) {
    for (const { run, of } of own)
      draft.tell(runText('log-left-out/copied', { original: cellOf(of) }), cellOf(run), 'runs')
    return runs.filter((run) => !own.some((copy) => copy.run === run))
  }
  if (answer !== READ)
    draft.ask({
      path: PATH,
      cells: own.flatMap(({ run, of }) => [cellOf(run), cellOf(of)]),
      ...questions.copied({
        copies: own.map(({ run }) => cellOf(run)),
        originals: own.map(({ of }) => cellOf(of)),
      }),
    })
  return runs
}
