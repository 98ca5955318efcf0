import { expect } from 'vitest'

/** Compares with a figure computed elsewhere in double precision, to a relative difference. */
export function expectClose(actual: number, expected: number, relative: number, what = 'value'): void {
  const off = Math.abs(actual / expected - 1)
  expect(off, `${what} is ${actual}, expected ${expected}`).toBeLessThanOrEqual(relative)
}
