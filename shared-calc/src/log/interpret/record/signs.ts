import { runText } from '../../../catalogue/findings/log/runs.js'
import { tableText } from '../../../catalogue/findings/log/tables.js'
import { questions } from '../../../catalogue/questions.js'
import { plain } from '../../../catalogue/words.js'
import type { Direction } from '../../../contract/record/index.js'
import type { Draft } from './draft.js'

interface SignedRun {
  direction: Direction | undefined
  pressures: readonly number[]
  /** Mean of the zero-flow values as logged. */
  zero: number | undefined
  cell: string
  induced: boolean
}

/** Factors that turn pressures and zero-flow values as logged into inside minus outside. */
export interface SignFactors {
  readings: 1 | -1
  zero: 1 | -1
}

/** How the log counts pressures: inside minus outside, the other way round, or depressurisation without its minus. */
export function signsOf(draft: Draft, runs: readonly SignedRun[]): SignFactors[] {
  const against = runs.map(
    ({ direction, pressures }) =>
      direction !== undefined && majority(pressures) === -(direction === 'depressurisation' ? -1 : 1),
  )
  const reversed =
    runs.length > 0 && against.every(Boolean) && runs.some(({ direction }) => direction === 'pressurisation')
  return runs.map((run, index) => {
    if (!against[index]) return { readings: 1, zero: 1 }
    if (reversed) {
      draft.tell(runText('log-sign/both'), run.cell, `runs[${index}]`)
      return { readings: -1, zero: -1 }
    }
    draft.tell(tableText('log-sign/minus-added'), run.cell, `runs[${index}]`)
    return { readings: -1, zero: zeroSign(draft, run, runs, index) }
  })
}

const majority = (values: readonly number[]): number =>
  Math.sign(values.reduce((sum, value) => sum + Math.sign(value), 0))

/** Zero flow keeps its own sign where both runs show the same; where they differ it decides the result and is asked for. */
function zeroSign(draft: Draft, run: SignedRun, runs: readonly SignedRun[], index: number): 1 | -1 {
  if (run.zero === undefined || run.zero === 0 || run.induced || !run.direction) return 1
  const path = 'zeroFlow.sign'
  const answer = draft.answers[path]
  if (answer === 'as readings') return -1
  if (answer === 'inside minus outside') return 1
  const other = runs.find((one) => one !== run && one.zero !== undefined)
  if (
    other?.zero !== undefined &&
    Math.sign(other.zero) !== Math.sign(run.zero) &&
    Math.abs(run.zero - other.zero) > 0.5
  ) {
    draft.ask({
      path,
      cells: [run.cell],
      ...questions.zeroFlowSign({ direction: run.direction, mean: plain(run.zero) }),
    })
    return 1
  }
  draft.tell(runText('log-sign/zero-flow-kept'), run.cell, `runs[${index}]`)
  return 1
}
