import { counted } from '@draughtbook/shared-calc'

/** A figure for people: three significant digits, never an exponent within what buildings give. */
export function numberText(value: number, digits = 3): string {
  const size = Math.abs(value)
  if (size !== 0 && (size < 1e-4 || size >= 1e9)) return value.toExponential(digits - 1)
  const places = size === 0 ? 0 : Math.max(0, digits - 1 - Math.floor(Math.log10(size)))
  return value.toFixed(Math.min(places, 20))
}

/** "2 cautions", "1 note", "no notes". */
export const count = (number: number, one: string, several = `${one}s`): string =>
  number === 0 ? `no ${several}` : counted(number, one, several)
