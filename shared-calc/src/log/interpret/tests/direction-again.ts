import { fileText } from '../../../catalogue/findings/log/file.js'
import type { Draft } from '../record/draft.js'
import type { FoundRun } from '../tables/runs.js'
import { directionOf, type TestGroup } from './test-group.js'

/**
 * "Depressurisation 1", "Depressurisation 2", "Pressurisation" on one sheet are read as a test of one run and a test of two. That it may
 * be one test with a run that was repeated is said in both.
 */
export function tellDirectionAgain(draft: Draft, group: TestGroup, groups: readonly TestGroup[]): void {
  const own = groups.find((other) => other !== group && isAgain(group, other))
  const [first] = group.runs
  const direction = first && directionOf(first)
  if (!own || !direction) return
  const cells = [group, own].flatMap(({ runs }) =>
    runs.filter((run) => directionOf(run) === direction).map(cellOf),
  )
  draft.tell(fileText('log-direction-again', { direction }), cells, 'runs')
}

const cellOf = ({ readings }: FoundRun): string => readings[0]?.pressure.cell ?? ''

/** One of the two has a single run, and the other has its direction too; nothing in the log gives each a name of its own. */
function isAgain(one: TestGroup, other: TestGroup): boolean {
  const [[first], [second]] = [one.runs, other.runs]
  const counts = [one, other].map(({ runs }) => runs.length).sort()
  return (
    first !== undefined &&
    second !== undefined &&
    first.view === second.view &&
    first.row === undefined &&
    one.hidden === other.hidden &&
    counts[0] === 1 &&
    counts[1] === 2 &&
    [one, other].some(({ key }) => /^\d+$/.test(key)) &&
    directionOf(first) !== undefined &&
    other.runs.some((run) => directionOf(run) === directionOf(first))
  )
}
