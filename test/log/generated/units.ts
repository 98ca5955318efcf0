/** A unit as a log writes it: value in it = (value in the record's unit − offset) / factor. */
export interface Unit {
  symbol: string
  factor: number
  offset?: number
  /** Digits after the point that a person logs in it. */
  digits: number
}

// Factors: NIST SP 811 (2008), appendix B.8; cubic foot and foot exact. Record's units: Pa, m³/h, m³, m², m, °C.
const FOOT_m = 0.3048

export const PRESSURE = {
  Pa: { symbol: 'Pa', factor: 1, digits: 1 },
  wholePa: { symbol: 'Pa', factor: 1, digits: 0 },
  inWC: { symbol: 'in. w.c.', factor: 249.0889, digits: 4 },
  hPa: { symbol: 'hPa', factor: 100, digits: 3 },
  mmWC: { symbol: 'mm H2O', factor: 9.80665, digits: 2 },
} as const satisfies Record<string, Unit>

export const FLOW = {
  m3h: { symbol: 'm³/h', factor: 1, digits: 0 },
  ls: { symbol: 'l/s', factor: 3.6, digits: 1 },
  m3s: { symbol: 'm³/s', factor: 3600, digits: 4 },
  cfm: { symbol: 'cfm', factor: 60 * FOOT_m ** 3, digits: 0 },
  m3min: { symbol: 'm³/min', factor: 60, digits: 2 },
} as const satisfies Record<string, Unit>

export const VOLUME = {
  m3: { symbol: 'm³', factor: 1, digits: 1 },
  ft3: { symbol: 'ft³', factor: FOOT_m ** 3, digits: 0 },
} as const satisfies Record<string, Unit>

export const AREA = {
  m2: { symbol: 'm²', factor: 1, digits: 1 },
  ft2: { symbol: 'ft²', factor: FOOT_m ** 2, digits: 0 },
} as const satisfies Record<string, Unit>

export const LENGTH = {
  m: { symbol: 'm', factor: 1, digits: 1 },
  ft: { symbol: 'ft', factor: FOOT_m, digits: 1 },
} as const satisfies Record<string, Unit>

export const TEMPERATURE = {
  C: { symbol: '°C', factor: 1, digits: 1 },
  F: { symbol: '°F', factor: 5 / 9, offset: -160 / 9, digits: 0 },
  K: { symbol: 'K', factor: 1, offset: -273.15, digits: 1 },
} as const satisfies Record<string, Unit>

export const BAROMETER = {
  Pa: { symbol: 'Pa', factor: 1, digits: 0 },
  hPa: { symbol: 'hPa', factor: 100, digits: 0 },
  mbar: { symbol: 'mbar', factor: 100, digits: 0 },
  kPa: { symbol: 'kPa', factor: 1000, digits: 1 },
  inHg: { symbol: 'inHg', factor: 3386.389, digits: 2 },
  mmHg: { symbol: 'mmHg', factor: 133.3224, digits: 0 },
} as const satisfies Record<string, Unit>

export interface Units {
  pressure: Unit
  flow: Unit
  volume: Unit
  area: Unit
  length: Unit
  temperature: Unit
  barometer: Unit
}

export const METRIC: Units = {
  pressure: PRESSURE.Pa,
  flow: FLOW.m3h,
  volume: VOLUME.m3,
  area: AREA.m2,
  length: LENGTH.m,
  temperature: TEMPERATURE.C,
  barometer: BAROMETER.hPa,
}

export const CUSTOMARY: Units = {
  pressure: PRESSURE.Pa,
  flow: FLOW.cfm,
  volume: VOLUME.ft3,
  area: AREA.ft2,
  length: LENGTH.ft,
  temperature: TEMPERATURE.F,
  barometer: BAROMETER.inHg,
}

/** What a person writes down in that unit. */
export function logged(value: number, { factor, offset = 0, digits }: Unit): number {
  return Number(((value - offset) / factor).toFixed(digits))
}

/** What the figure written down means, in the record's unit. */
export function meant(written: number, { factor, offset = 0 }: Unit): number {
  return written * factor + offset
}
