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

/** A quantity with a limit, by its name: n50 as it is, one at another pressure with that pressure. */
export const limitedName = (quantity: string, referencePressure_Pa: number): string =>
  quantity.replace('_pr', ` at ${referencePressure_Pa} Pa`)

/** A judged value, as it is compared with its limit. */
export interface Judged {
  readonly value: number
  readonly limit: number
  /** Limit less value; 0 where they count as equal. */
  readonly margin: number
}

/** Decimals that a judged value has at least. */
const LEAST = 2
/** Differences below this share of the limit count as none, so no more digits are needed to show one. */
const SMALLEST_SHARE = 1e-9
const MOST = 15

/**
 * Decimals with which value and margin can be printed beside the limit so that they never contradict the verdict: 0.603
 * against 0.6 is not printed as 0.60, and a margin that is not 0 is not printed as 0.
 */
export function decimalsBeside({ value, limit, margin }: Judged): number {
  const inLimit = String(limit).split('.')[1]?.length ?? 0
  const enough = Math.ceil(-Math.log10(SMALLEST_SHARE * Math.abs(limit)))
  const most = Math.min(MOST, Math.max(LEAST, Number.isFinite(enough) ? enough : LEAST))
  for (let decimals = Math.min(most, Math.max(LEAST, inLimit)); decimals < most; decimals += 1) {
    const shown = Number(value.toFixed(decimals))
    const apart = Number(margin.toFixed(decimals))
    if (Math.sign(limit - shown) === Math.sign(margin) && Math.sign(apart) === Math.sign(margin))
      return decimals
  }
  return most
}

/** Value, limit and margin as people read them, the margin with its sign; together they never contradict the verdict. */
export function judgedTexts(judged: Judged): { value: string; limit: string; margin: string } {
  const decimals = decimalsBeside(judged)
  return {
    value: judged.value.toFixed(decimals),
    limit: String(judged.limit),
    margin: `${judged.margin > 0 ? '+' : ''}${judged.margin.toFixed(decimals)}`.replace(/^-/, '−'),
  }
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
