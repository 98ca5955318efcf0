import { runText } from '../../../catalogue/findings/log/runs.js'
import { tableText } from '../../../catalogue/findings/log/tables.js'
import { questions } from '../../../catalogue/questions.js'
import { plain } from '../../../catalogue/words.js'
import { type DecidedSign, decideSigns, type SignedRun } from '../../signs.js'
import type { Draft } from './draft.js'
import type { StatedSign } from './stated-sign.js'

/** How the log counts pressures, with what to tell or to ask of it. */
export function signsOf(
  draft: Draft,
  runs: readonly (SignedRun & { readonly cell: string })[],
  stated: StatedSign | undefined,
): DecidedSign[] {
  const path = 'zeroFlow.sign'
  const saysReversed = stated?.order === 'outside minus inside'
  const decided = decideSigns(runs, draft.answers[path], saysReversed)
  // The signs of the readings are those of their directions: the sentence is not of them, or they were turned when they were typed.
  if (stated && saysReversed && runs.length > 0 && !decided.some(({ reversed }) => reversed))
    draft.tell(runText('log-sign/stated-otherwise'), stated.cell, 'runs')
  for (const [index, { direction, zero = 0, cell }] of runs.entries()) {
    const { readings, reversed, zeroFlow } = decided[index] ?? { readings: 1 }
    const at = `runs[${index}]`
    if (readings === -1)
      draft.tell(reversed ? runText('log-sign/both') : tableText('log-sign/minus-added'), cell, at)
    if (zeroFlow === 'open' && direction)
      draft.ask({ path, cells: [cell], ...questions.zeroFlowSign({ direction, mean: plain(zero) }) })
    if (zeroFlow === 'kept') draft.tell(runText('log-sign/zero-flow-kept'), cell, at)
  }
  return decided
}
