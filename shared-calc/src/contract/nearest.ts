import { distance } from 'fastest-levenshtein'

/** Longer texts are no misspelt names. */
const LONGEST = 80

/**
 * The known name that a misspelt one most likely stands for.
 * @param spellings - other ways to write a name; without it a name is compared as it is
 */
export function nearest<Name extends string>(
  typed: string,
  known: readonly Name[],
  spellings: (name: Name) => readonly string[] = (name) => [name],
): Name | undefined {
  const [first] = byDistance(typed, known, spellings)
  return first && first.score <= Math.max(1.1, wanted(typed).length / 4) ? first.name : undefined
}

/** Names listed after an unknown one; more of them are not read. */
const LISTED = 10

/** The known names as the end of a message, the nearest first if any is near; of a long list the number of the others. */
export function nearestFirst(typed: string, known: readonly string[]): string {
  const names =
    nearest(typed, known) === undefined
      ? known
      : byDistance(typed, known, (name) => [name]).map(({ name }) => name)
  const others = names.length - LISTED
  return others > 1 ? `${names.slice(0, LISTED).join(', ')} and ${others} others` : names.join(', ')
}

/** The names, each with how far it is from what was typed, the nearest first; equally near ones stay in order. */
function byDistance<Name extends string>(
  typed: string,
  known: readonly Name[],
  spellings: (name: Name) => readonly string[],
): readonly { name: Name; score: number }[] {
  const meant = wanted(typed)
  const score = (name: Name): number =>
    Math.min(...spellings(name).map((one, i) => apartness(meant, letters(one)) + i * 0.01))
  return known.map((name) => ({ name, score: score(name) })).sort((a, b) => a.score - b.score)
}

const wanted = (typed: string): string => letters(typed.slice(0, LONGEST))

/** Hyphens, dots and capitals do not make a name another. */
const letters = (name: string): string => name.toLowerCase().replace(/[^\p{L}\p{N}]/gu, '')

/** Letters to change; fewer where what was typed is the beginning of the name. */
const apartness = (wanted: string, name: string): number =>
  wanted.length > 2 && name.startsWith(wanted) ? 1 : distance(wanted, name)

/** ", did you mean X?" as the end of a message, where there is a near name. */
export const didYouMean = (name: string | undefined): string =>
  name === undefined ? '' : `; did you mean ${name}?`
