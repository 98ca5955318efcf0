import type { Difference, DifferenceValue } from '../report.js'

/** A difference in what is seen: what it is of, where, as issued and as it is in the file. */
export const seen = (
  kind: Difference['kind'],
  label: string,
  cell: string | undefined,
  issued: DifferenceValue,
  now: DifferenceValue,
): Difference => ({
  kind,
  label,
  ...(cell !== undefined && { cell }),
  recorded: now,
  expected: issued,
  rounding: false,
})

/** Entries of two lists of settings that are not the same. */
export function settingDifferences(
  kind: Difference['kind'],
  about: string,
  cell: string | undefined,
  issued: ReadonlyMap<string, string>,
  now: ReadonlyMap<string, string>,
): Difference[] {
  return [...new Set([...issued.keys(), ...now.keys()])].flatMap((key) => {
    const [a, b] = [issued.get(key) ?? '', now.get(key) ?? '']
    return a === b ? [] : [seen(kind, `${about}${key}`, cell, a, b)]
  })
}
