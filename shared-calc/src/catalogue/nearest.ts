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
  const wanted = letters(typed.slice(0, LONGEST))
  const score = (name: Name): number =>
    Math.min(...spellings(name).map((one, i) => apartness(wanted, letters(one)) + i * 0.01))
  const [first] = known.map((name) => ({ name, score: score(name) })).sort((a, b) => a.score - b.score)
  return first && first.score <= Math.max(1.1, wanted.length / 4) ? first.name : undefined
}

/** Hyphens, dots and capitals do not make a name another. */
const letters = (name: string): string => name.toLowerCase().replace(/[^\p{L}\p{N}]/gu, '')

/** Letters to change; fewer where what was typed is the beginning of the name. */
const apartness = (wanted: string, name: string): number =>
  wanted.length > 2 && name.startsWith(wanted) ? 1 : distance(wanted, name)

/** ", did you mean X?" as the end of a message, where there is a near name. */
export const didYouMean = (name: string | undefined): string =>
  name === undefined ? '' : `; did you mean ${name}?`
