import type { Constant } from '../engine/index.js'

const iso = { text: 'ISO 9972:2015', seen: 'memory' } as const
const vapour = {
  text: 'UK technical standard on EN 13829 (2010), saturation pressure',
  seen: 'read',
} as const
const moist = { text: 'ISO 9972:2015, Annex A, density of moist air', seen: 'memory' } as const
const altitude = {
  text: 'US Standard Atmosphere 1976; ASHRAE Fundamentals 2017 ch. 1',
  seen: 'read',
} as const
const sutherland = { text: 'Roulet 2008, eq. 4.17; US Standard Atmosphere 1976', seen: 'read' } as const
const si = { text: 'definition of the unit', seen: 'definition' } as const

/** Every constant, once. Expressions refer to them by symbol. */
export const constants: readonly Constant[] = [
  { symbol: 'rho_0', name: 'reference air density', unit: 'kg/m³', value: 1.2041, source: iso },
  { symbol: 'T_z', name: '0 °C on the absolute scale', unit: 'K', value: 273.15, source: si },
  { symbol: 'p_0', name: 'standard atmospheric pressure', unit: 'Pa', value: 101_325, source: altitude },
  { symbol: 'R_d', name: 'gas constant of dry air', unit: 'J/(kg·K)', value: 287.055, source: moist },
  { symbol: 'k_v', name: 'vapour correction of the density', unit: '1', value: 0.37802, source: moist },
  { symbol: 'a_v', name: 'saturation pressure, constant term', unit: '1', value: 59.484085, source: vapour },
  { symbol: 'b_v', name: 'saturation pressure, 1/T term', unit: 'K', value: 6790.4985, source: vapour },
  { symbol: 'c_v', name: 'saturation pressure, ln T term', unit: '1', value: 5.02802, source: vapour },
  { symbol: 'a_h', name: 'standard atmosphere, lapse', unit: '1/m', value: 2.25577e-5, source: altitude },
  { symbol: 'b_h', name: 'standard atmosphere, exponent', unit: '1', value: 5.25588, source: altitude },
  {
    symbol: 'g_n',
    name: 'standard acceleration of free fall',
    unit: 'm/s²',
    value: 9.80665,
    source: { text: 'CGPM 1901', seen: 'definition' },
  },
  {
    symbol: 'pi',
    name: 'circumference of a circle over its diameter',
    unit: '1',
    value: Math.PI,
    source: si,
  },
  {
    symbol: 'b_mu',
    name: 'viscosity of air, Sutherland coefficient',
    unit: 'Pa·s/K^0.5',
    value: 1.458e-6,
    source: sutherland,
  },
  {
    symbol: 'S_mu',
    name: 'viscosity of air, Sutherland temperature',
    unit: 'K',
    value: 110.4,
    source: sutherland,
  },
  { symbol: 'theta_0', name: 'temperature of the reference air', unit: '°C', value: 20, source: iso },
  {
    symbol: 'l_f',
    name: 'foot',
    unit: 'm',
    value: 0.3048,
    source: { text: 'NIST SP 811, appendix B.8', seen: 'read' },
  },
  {
    symbol: 'a_f',
    name: 'altitude correction for a foot',
    unit: '1',
    value: 6e-6,
    source: { text: 'ANSI/RESNET/ICC 380', seen: 'memory' },
  },
  {
    symbol: 'k_ext',
    name: 'extension of a one-point result',
    unit: '1',
    value: 1.1,
    source: { text: 'ANSI/RESNET/ICC 380', seen: 'memory' },
  },
  {
    symbol: 'C_g',
    name: 'discharge coefficient of the equivalent leakage area',
    unit: '1',
    value: 0.611,
    source: { text: 'CAN/CGSB-149.10', seen: 'memory' },
  },
  { symbol: 's_h', name: 'seconds in an hour', unit: 's/h', value: 3600, source: si },
  { symbol: 'u_A', name: 'square centimetres in a square metre', unit: 'cm²/m²', value: 1e4, source: si },
  { symbol: 'u_m', name: 'millimetres in a metre', unit: 'mm/m', value: 1000, source: si },
  {
    symbol: 'alpha',
    name: 'share of cases outside the 95 % interval',
    unit: '1',
    value: 0.05,
    source: { text: 'ISO 9972:2015, Annex C', seen: 'memory' },
  },
  {
    symbol: 'C_o',
    name: 'discharge coefficient of a sharp-edged hole',
    unit: '1',
    value: 0.61,
    source: { text: 'common practice, no source', seen: 'common practice' },
  },
]

/** A constant's value by symbol. Throws RangeError for an unknown symbol. */
export function constantValue(symbol: string): number {
  const constant = constants.find((candidate) => candidate.symbol === symbol)
  if (!constant) throw new RangeError(`no constant ${symbol}`)
  return constant.value
}
