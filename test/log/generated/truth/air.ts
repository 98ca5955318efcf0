import type { Direction, Plate } from '../house.js'

// Written from the published formulas, apart from the program: nothing here comes from shared-calc.

/** Density to which leakage and calibrations refer, kg/m³: dry air, 20 °C, 101 325 Pa. */
export const REFERENCE_DENSITY = 1.2041

/**
 * Density of moist air in kg/m³ from °C and Pa. Saturation pressure: UK technical standard on EN 13829 (2010), 2339 Pa at
 * 20 °C; mixture of ideal gases with 287.055 J/(kg·K) for dry air.
 */
export function moistAirDensity(temperature_C: number, pressure_Pa: number, relativeHumidity = 0.5): number {
  const kelvin = temperature_C + 273.15
  const vapour = relativeHumidity * Math.exp(59.484085 - 6790.4985 / kelvin - 5.02802 * Math.log(kelvin))
  return (pressure_Pa - 0.37802 * vapour) / (287.055 * kelvin)
}

/** Pressure of the standard atmosphere in Pa at an altitude in m. Source: US Standard Atmosphere 1976. */
export function standardPressure(altitude_m: number): number {
  return 101325 * (1 - 2.25577e-5 * altitude_m) ** 5.25588
}

/** Mass is kept between device and envelope: a fan that blows in moves outdoor air, leaks then let indoor air out. */
export function flowThroughEnvelope(device: number, direction: Direction, inside: number, outside: number) {
  return direction === 'depressurisation' ? (device * inside) / outside : (device * outside) / inside
}

/** The way back of {@link flowThroughEnvelope}. */
export function flowAtDevice(envelope: number, direction: Direction, inside: number, outside: number) {
  return direction === 'depressurisation' ? (envelope * outside) / inside : (envelope * inside) / outside
}

/** Pressure at a plate, Pa, for a flow of air of that density; plates are calibrated at the reference density. */
export function platePressure(flow_m3_h: number, { coefficient, exponent }: Plate, density: number) {
  return (flow_m3_h / (coefficient * Math.sqrt(REFERENCE_DENSITY / density))) ** (1 / exponent)
}

/** Flow in m³/h that a plate's pressure means, the way back of {@link platePressure}. */
export function plateFlow(
  pressure_Pa: number,
  { coefficient, exponent }: Plate,
  density: number,
  calibrationDensity = REFERENCE_DENSITY,
): number {
  return coefficient * Math.abs(pressure_Pa) ** exponent * Math.sqrt(calibrationDensity / density)
}
