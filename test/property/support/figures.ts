import type { Evaluation } from '@draughtbook/shared-calc'
import { expect } from 'vitest'

/** Every number in a value with its path, the strings and the rest left out. */
export function numbersIn(value: unknown, path = ''): [path: string, value: number][] {
  if (typeof value === 'number') return [[path, value]]
  if (typeof value !== 'object' || value === null) return []
  return Object.entries(value).flatMap(([key, inner]) => numbersIn(inner, `${path}/${key}`))
}

/** What an evaluation says of the building, without what it says of the record it came from. */
export const figuresOf = ({ air, runs, results, verdict }: Evaluation) => ({ air, runs, results, verdict })

/** Compares all numbers of two values by their paths, to a relative difference of the larger. */
export function expectSameNumbers(actual: unknown, expected: unknown, relative: number, absolute = 0): void {
  const [a, b] = [numbersIn(actual), numbersIn(expected)]
  expect(a.map(([path]) => path)).toEqual(b.map(([path]) => path))
  for (const [i, [path, value]] of a.entries()) {
    const other = b[i]?.[1] ?? Number.NaN
    const allowed = Math.max(relative * Math.max(Math.abs(value), Math.abs(other)), absolute)
    expect(Math.abs(value - other) <= allowed, `${path}: ${value} is not ${other}`).toBe(true)
  }
}
