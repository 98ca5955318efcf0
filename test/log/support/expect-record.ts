import { expect } from 'vitest'

/** Relative difference allowed where a unit was converted: rounding of doubles, nothing more. */
const ROUNDING = 1e-12

/** Compares a record field by field: texts and keys exactly, numbers to the last bits of a conversion. */
export function expectRecord(actual: unknown, expected: unknown, path = 'record'): void {
  if (typeof expected === 'number') {
    expect(typeof actual, path).toBe('number')
    const off = Math.abs(Number(actual) - expected)
    expect(off, `${path} is ${String(actual)}, expected ${expected}`).toBeLessThanOrEqual(
      ROUNDING * Math.abs(expected),
    )
  } else if (typeof expected === 'object' && expected !== null) {
    expect(Object.keys(actual ?? {}).sort(), path).toEqual(Object.keys(expected).sort())
    for (const [key, value] of Object.entries(expected))
      expectRecord((actual as Record<string, unknown>)[key], value, `${path}.${key}`)
  } else expect(actual, path).toBe(expected)
}
