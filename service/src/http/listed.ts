import type { Problem } from '@draughtbook/shared-calc'

/** Most errors listed: a body of nothing but faults must not make an answer many times its size. */
const MOST_ERRORS = 100

/**
 * The first errors, and how many more there are. A thread lists them before it answers: tens of thousands would hold the event loop while
 * they are taken over. A list made here is left as it is.
 */
export function listed(problems: readonly Problem[]): Problem[] {
  const all = problems.length <= MOST_ERRORS + 1
  const first = (all ? problems : problems.slice(0, MOST_ERRORS)).map(({ path, cell, message }) => ({
    path,
    ...(cell !== undefined && { cell }),
    message,
  }))
  return all ? first : [...first, { path: '', message: `and ${problems.length - MOST_ERRORS} more errors` }]
}
