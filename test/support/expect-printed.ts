import { expect } from 'vitest'

/** Half a unit of the last place a figure is printed to: "0.0838" → 0.00005, "1.2e3" → 50, "101418" → 0.5. */
export function halfLastPlace(printed: string): number {
  const match = /^[+-]?\d+(?:\.(\d+))?(?:e([+-]?\d+))?$/i.exec(printed)
  if (!match) throw new Error(`"${printed}" is not a printed number`)
  const [, decimals = '', exponent = '0'] = match
  return 0.5 * 10 ** (Number(exponent) - decimals.length)
}

/**
 * Compares a computed value with a published figure, given as the text that was printed. They agree when the value,
 * rounded to the printed places, is the figure: within half a unit of the last place.
 */
export function expectPrinted(actual: number, printed: string, what = 'value'): void {
  // The last bits of a double are no part of the comparison: a published 0.5 is met by 0.49999999999999994.
  const allowed = halfLastPlace(printed) * (1 + 1e-12) + Math.abs(Number(printed)) * 2 ** -52
  const off = Math.abs(actual - Number(printed))
  expect(off, `${what} is ${actual}, published ${printed}`).toBeLessThanOrEqual(allowed)
}
