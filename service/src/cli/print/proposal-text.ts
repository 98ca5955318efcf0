import type { Proposal } from '@draughtbook/shared-calc/log'

/** A proposed layout as people read it: each guess with its cells, its confidence and its reason; then what is missing. */
export function proposalText({ guesses, notFound, questions }: Proposal): string {
  const lines = guesses.map(
    ({ path, cells, confidence, reason }) =>
      `  ${String(Math.round(100 * confidence)).padStart(3)} %  ${path}  ${cells.join(', ')}\n         ${reason}`,
  )
  return [
    'Proposed',
    ...lines,
    ...notFound.map((what) => `Not found  ${what}`),
    ...questions.map((question) => `To decide  ${question}`),
  ].join('\n')
}
