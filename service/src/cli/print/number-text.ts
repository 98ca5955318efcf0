/** A figure for people: three significant digits, never an exponent within what buildings give. */
export function numberText(value: number, digits = 3): string {
  const size = Math.abs(value)
  if (size !== 0 && (size < 1e-4 || size >= 1e9)) return value.toExponential(digits - 1)
  const places = size === 0 ? 0 : Math.max(0, digits - 1 - Math.floor(Math.log10(size)))
  return value.toFixed(Math.min(places, 20))
}

/**
 * Two figures that are compared, with as many digits as it takes to tell them apart: 0.6004 against 0.6 must not
 * both read 0.600.
 */
export function apart(a: number, b: number): [string, string] {
  for (let digits = 3; digits <= 15; digits++) {
    const texts: [string, string] = [numberText(a, digits), numberText(b, digits)]
    if (a === b || Number(texts[0]) !== Number(texts[1])) return texts
  }
  return [String(a), String(b)]
}

/** "2 cautions", "1 note", "no notes". */
export const count = (number: number, one: string, many = `${one}s`): string =>
  `${number === 0 ? 'no' : number} ${number === 1 ? one : many}`
