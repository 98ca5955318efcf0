import { runText } from '../../../catalogue/findings/log/runs.js'
import { questions } from '../../../catalogue/questions.js'
import { type Direction, oppositeDirection } from '../../../contract/record/index.js'
import type { FoundRun } from '../tables/runs.js'
import type { Draft } from './draft.js'
import type { StatedSign } from './stated-sign.js'

const PATH = 'pressure.sign'
const EXCHANGED = 'titles exchanged'
const OUTSIDE_MINUS_INSIDE = 'outside minus inside'

/**
 * Two runs whose pressures both have the sign of the other direction: logged as outside minus inside, or under exchanged titles. The
 * air densities and the zero flow differ, and nothing in the log tells which, so it is asked, unless the log says so itself.
 * @returns the directions by the signs, where the titles are exchanged
 */
export function exchangedTitles(
  draft: Draft,
  runs: readonly FoundRun[],
  stated: StatedSign | undefined,
): Direction[] | undefined {
  if (!contradicts(draft, runs)) return undefined
  const answer = draft.answers[PATH]?.trim()
  const cells = runs.map(({ block }) => block.pressure.headingCell)
  if (answer === EXCHANGED) {
    draft.tell(runText('log-sign/titles'), cells, 'runs')
    return runs.map(({ direction }) => oppositeDirection(direction as Direction))
  }
  if (answer !== OUTSIDE_MINUS_INSIDE && stated?.order !== OUTSIDE_MINUS_INSIDE)
    draft.ask({ path: PATH, cells, ...questions.pressureSign() })
  return undefined
}

const contradicts = (draft: Draft, runs: readonly FoundRun[]): boolean =>
  runs.length === 2 &&
  new Set(runs.map(({ direction }) => direction)).size === 2 &&
  runs.every(
    ({ direction, readings }, index) =>
      direction !== undefined &&
      draft.answers[`runs[${index}].direction`] === undefined &&
      readings.length > 0 &&
      readings.every(({ pressure }) =>
        direction === 'pressurisation' ? pressure.value < 0 : pressure.value > 0,
      ),
  )
