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
