/** Units of published figures: as data spells them → as people print them. */
const printed: Readonly<Record<string, string>> = {
  '1': '',
  'm3/h': 'm³/h',
  'm3/(h·m2)': 'm³/(h·m²)',
  'm3/(h·Pa^n)': 'm³/(h·Paⁿ)',
  m2: 'm²',
  m3: 'm³',
  cm2: 'cm²',
  in2: 'in²',
  ft2: 'ft²',
  ft3: 'ft³',
  'cfm/ft2': 'cfm/ft²',
  'L/(s·m2)': 'L/(s·m²)',
  'cm2/m2': 'cm²/m²',
}

/** A unit as people print it; nothing for a pure number. */
export const unitText = (unit: string): string => printed[unit] ?? unit

/** Most decimals that a judged value is shown with: a computed value is not known any closer. */
const MOST = 9

/**
 * Decimals with which a value and its limit can be printed so that they never contradict the verdict: 0.603 against
 * 0.6 is not printed as 0.60, and a margin that is not 0 is not printed as 0.
 * @param least - decimals that the figure is printed with where that is enough
 */
export function decimalsBeside(value: number, limit: number, least: number): number {
  const inLimit = String(limit).split('.')[1]?.length ?? 0
  for (let decimals = Math.max(least, inLimit); decimals < MOST; decimals += 1) {
    const shown = Number(value.toFixed(decimals))
    const margin = Number((limit - value).toFixed(decimals))
    if (
      Math.sign(limit - shown) === Math.sign(limit - value) &&
      Math.sign(margin) === Math.sign(limit - value)
    )
      return decimals
  }
  return MOST
}

/** A US customary unit with what one of it is in the unit of the evaluation. Source: NIST SP 811, appendix B.8 (exact). */
export interface CustomaryUnit {
  readonly unit: string
  readonly inOurs: number
}

const FOOT_m = 0.3048

export const customary = {
  /** Cubic feet a minute, in m³/h. */
  cfm: { unit: 'cfm', inOurs: FOOT_m ** 3 * 60 },
  /** Cubic feet a minute for each square foot, in m³/(h·m²). */
  cfmPerSquareFoot: { unit: 'cfm/ft2', inOurs: FOOT_m * 60 },
  /** Square inches, in cm². */
  squareInch: { unit: 'in2', inOurs: 2.54 ** 2 },
} as const satisfies Record<string, CustomaryUnit>
