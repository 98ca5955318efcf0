/** Values that a field of an ordinary test has. What is outside is read, and a finding asks whether it is right. */
export interface PlausibleRange {
  /** The trade's term. */
  readonly term: string
  readonly unit: string
  readonly lowest: number
  readonly highest: number
}

/** Another unit in which the value is often typed by mistake: value · factor + offset gives the unit of the field. */
export interface UnitSlip {
  readonly unit: string
  readonly factor: number
  readonly offset?: number
}

const between = (term: string, unit: string, lowest: number, highest: number): PlausibleRange => ({
  term,
  unit,
  lowest,
  highest,
})

/**
 * Plausible ranges by field path, for the findings, the pane and the log reader alike. They only ask: what no test can
 * have is refused by the bounds of the schema. Source: common practice, no source.
 */
export const plausibleRanges = {
  'building.volume_m3': between('internal volume', 'm³', 30, 500_000),
  'building.envelopeArea_m2': between('envelope area', 'm²', 40, 200_000),
  'building.lossArea_m2': between('loss area without the lowest floor', 'm²', 20, 200_000),
  'building.floorArea_m2': between('floor area', 'm²', 10, 200_000),
  'building.height_m': between('building height', 'm', 2, 100),
  'building.altitude_m': between('altitude of the site', 'm', -100, 4000),
  'conditions.indoorTemperature_C': between('indoor temperature', '°C', -5, 40),
  'conditions.outdoorTemperature_C': between('outdoor temperature', '°C', -35, 45),
  'conditions.barometricPressure_Pa': between('barometric pressure', 'Pa', 60_000, 108_500),
  'conditions.windSpeed_m_s': between('wind speed', 'm/s', 0, 25),
  'flowDevice.referenceDensity_kg_m3': between('reference density of the flow device', 'kg/m³', 1.1, 1.3),
} as const satisfies Readonly<Record<string, PlausibleRange>>

export type PlausibleField = keyof typeof plausibleRanges

/** The unit, of those often typed by mistake, in which a value would be plausible. */
export function likelySlip(
  value: number,
  { lowest, highest }: Pick<PlausibleRange, 'lowest' | 'highest'>,
  slips: readonly UnitSlip[],
): { readonly unit: string; readonly converted: number } | undefined {
  for (const { unit, factor, offset = 0 } of slips) {
    const converted = value * factor + offset
    if (converted >= lowest && converted <= highest) return { unit, converted }
  }
  return undefined
}

/** Source: NIST SP 811, appendix B (exact but for inches of mercury). */
export const pressureSlips: readonly UnitSlip[] = [
  { unit: 'hPa', factor: 100 },
  { unit: 'kPa', factor: 1000 },
  { unit: 'mmHg', factor: 133.3224 },
  { unit: 'inHg', factor: 3386.389 },
]

export const temperatureSlips: readonly UnitSlip[] = [
  { unit: '°F', factor: 5 / 9, offset: -160 / 9 },
  { unit: 'K', factor: 1, offset: -273.15 },
]
