import { InputError } from '../../contract/problem.js'

/** Metres in a unit of length. Source: definitions of the units; foot and inch: NIST SP 811, Appendix B (read). */
const metres: Readonly<Record<string, number>> = {
  m: 1,
  dm: 0.1,
  cm: 0.01,
  mm: 0.001,
  ft: 0.3048,
  in: 0.0254,
}

export const lengthUnits = Object.keys(metres)

/**
 * A length in metres.
 * @param where - field or cell that holds the length, for the error
 * @throws InputError for a unit that is not a length
 */
export function toMetres(value: number, unit: string, where: string): number {
  const factor = metres[unit]
  if (factor === undefined)
    throw new InputError([
      { path: where, message: `"${unit}" is not a unit of length; use one of ${lengthUnits.join(', ')}` },
    ])
  return value * factor
}
