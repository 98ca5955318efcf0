import { fileText } from '../../../catalogue/findings/log/file.js'
import { remarkFinding } from '../../../catalogue/findings/remark.js'
import { blockBetween } from '../../grid/address.js'
import type { FoundRun } from '../tables/runs.js'
import { statisticIn } from '../zero-flow/headings.js'
import { directionOf } from './test-group.js'

/** The mean of two flows is rounded, and was rounded from flows that were. */
const ALIKE = 0.006

/** A block whose flows are in every row the mean of those of two others, as under "average" beside both directions. */
export function meansOfRuns(runs: readonly FoundRun[]): FoundRun[] {
  const flows = new Map(runs.map((run) => [run, flowsOf(run)]))
  return runs.filter((run) => {
    const own = flows.get(run) ?? []
    const others = runs.filter(
      (one) =>
        one !== run && (isBeside(one, run) || isTitledMean(run)) && flows.get(one)?.length === own.length,
    )
    return (
      own.length > 2 &&
      others.some((one, index) =>
        others.slice(index + 1).some(
          (other) =>
            areTwoDirections(one, other) &&
            own.every((value, at) => {
              const [first, second] = [flows.get(one)?.[at] as number, flows.get(other)?.[at] as number]
              return first !== second && Math.abs((2 * value) / (first + second) - 1) < ALIKE
            }),
        ),
      )
    )
  })
}

/** The runs of one direction in two tests have no mean; by chance that of a third is near it. */
const areTwoDirections = (one: FoundRun, other: FoundRun): boolean => {
  const [first, second] = [directionOf(one), directionOf(other)]
  return !first || !second || first !== second
}

/** Below another test the flows of one may be near the mean of two others by chance. */
const isBeside = (one: FoundRun, other: FoundRun): boolean =>
  one.view.name === other.view.name && one.top <= other.bottom && one.bottom >= other.top

/** "Mean of both" over the block or its columns. */
export const isTitledMean = ({ view, block, top, left }: FoundRun): boolean =>
  [block.pressure.label.text, view.text(top, left), view.text(top - 1, left)].some(
    (text) => text !== undefined && statisticIn(text) === 'mean',
  )

const flowsOf = ({ readings }: FoundRun): number[] =>
  readings.map(({ carriers }) => Math.abs(carriers[0]?.value ?? Number.NaN))

/** Names the blocks that were left out. */
export const tellMeans = (means: readonly FoundRun[]) =>
  means.map(({ view, top, left, bottom, right }) =>
    remarkFinding(fileText('log-mean-of-runs'), [
      blockBetween(view.address(top, left), view.address(bottom, right)),
    ]),
  )
