import { chapter, derived, memory } from './chapter.js'

/** Wind speed from a wind force, where no speed was logged. */
export const windFromForce = chapter({
  title: 'Wind speed from wind force',
  inputs: [{ symbol: 'B_f', name: 'wind force', unit: 'Bft' }],
  formulas: [
    {
      symbol: 'U_w',
      name: 'wind speed',
      unit: 'm/s',
      expression: '0.836*B_f^1.5',
      source: memory('World Meteorological Organization, Beaufort scale'),
    },
  ],
})

/**
 * Wind at the house from wind at a meteorological station (10 m high, open ground). The methods set the same limit as 3
 * m/s near the ground and 6 m/s at the station: so one is converted to the other in that ratio.
 */
export const windFromStation = chapter({
  title: 'Wind at the house from wind at the station',
  inputs: [{ symbol: 'U_m', name: 'wind speed at the meteorological station', unit: 'm/s' }],
  formulas: [
    {
      symbol: 'U_w',
      name: 'wind speed at the house',
      unit: 'm/s',
      expression: 'U_m*3/6',
      source: memory('ISO 9972:2015, 5.1.4: 3 m/s near the ground, 6 m/s at the station'),
    },
  ],
})

const model = derived(
  'published model errors taken as the limits of a uniform distribution: half-width over √3',
)
const second = derived('mean of the power law over the openings, to second order in their pressures')
const oneSided = derived(
  'a variance is never negative: uniform distribution from 0 to twice the expected value, JCGM 100:2008, 4.3.7',
)

/**
 * Effects of wind on a test, apart from scatter. The gauge shows one pressure, the openings feel others: outside
 * pressures differ round the envelope by shares of the dynamic pressure.
 *
 * Shift: with the fan running, the openings weight their outside pressures differently than with it off, so that the
 * zero-flow pressure subtracted is not the mean that counts. It may lie either way, and opposite in the two directions.
 *
 * Spread: the flow through openings at pressures Δp + s, with mean of s 0, is C·Δpⁿ·(1 + n(n−1)/2·var(s)/Δp²): less
 * than Δp alone would give, in both directions. A variance is never negative, so its expected size is allowed for.
 */
export const windUncertainty = chapter({
  title: 'Uncertainty from wind',
  inputs: [
    { symbol: 'U_w', name: 'wind speed', unit: 'm/s' },
    { symbol: 'k_w', name: 'shift of the mean pressure, share of the dynamic pressure', unit: '1' },
    {
      symbol: 'k_s',
      name: 'spread of the pressure around the envelope, share of the dynamic pressure',
      unit: '1',
    },
  ],
  formulas: [
    {
      symbol: 'p_w',
      name: 'dynamic pressure of the wind',
      unit: 'Pa',
      expression: 'rho_0*U_w^2/2',
      source: derived("Bernoulli's law at reference density"),
    },
    {
      symbol: 'u_w',
      name: 'standard uncertainty of the shift of the mean pressure',
      unit: 'Pa',
      expression: 'k_w*p_w',
      source: model,
    },
    {
      symbol: 'v_w',
      name: 'expected variance of the pressure around the envelope',
      unit: 'Pa²',
      expression: '(k_s*p_w)^2',
      source: second,
    },
    {
      symbol: 'u_v',
      name: 'standard uncertainty of the variance',
      unit: 'Pa²',
      expression: 'v_w/sqrt(3)',
      source: oneSided,
    },
  ],
})

/**
 * Effects of warm indoor air on a test, apart from the zero-flow pressure that is subtracted. Openings at height h feel
 * Δp − (ρ_e − ρ_i)·g·(h − h₀).
 *
 * Shift: with the fan off the height h₀ of no pressure is where the flows in and out balance (near the middle of the
 * openings, each weighed by the root of its pressure); with the fan on it lies at the mean of their heights weighed by
 * flow and exponent. Different heights and exponents separate the two by about 0.06 to 0.1 of the total stack pressure,
 * either way, and opposite in the two directions. (Openings drawn at random, three to fifteen a house, gave 0.05 to
 * 0.10.)
 *
 * Spread: as for wind, with var(s) = share of the square of the stack pressure. Openings spread evenly over the height
 * give 1/12, all at foot and eaves 1/4.
 */
export const stackUncertainty = chapter({
  title: 'Uncertainty from the stack pressure',
  inputs: [
    { symbol: 'rho_i', name: 'density of the indoor air', unit: 'kg/m³' },
    { symbol: 'rho_e', name: 'density of the outdoor air', unit: 'kg/m³' },
    { symbol: 'h_b', name: 'height of the building', unit: 'm' },
    { symbol: 'k_t', name: 'shift of the effective zero, share of the stack pressure', unit: '1' },
    { symbol: 'k_h', name: 'variance over the openings, share of its square', unit: '1' },
  ],
  formulas: [
    {
      symbol: 'p_t',
      name: 'stack pressure over the height of the building',
      unit: 'Pa',
      expression: 'abs(rho_e - rho_i)*g_n*h_b',
      source: derived('hydrostatic law'),
    },
    {
      symbol: 'u_t',
      name: 'standard uncertainty of the effective zero',
      unit: 'Pa',
      expression: 'k_t*p_t',
      source: derived('balance of mass with the fan off and on; openings of unlike heights and exponents'),
    },
    {
      symbol: 'v_t',
      name: 'expected variance of the stack pressure over the openings',
      unit: 'Pa²',
      expression: 'k_h*p_t^2',
      source: second,
    },
    {
      symbol: 'u_tv',
      name: 'standard uncertainty of the variance',
      unit: 'Pa²',
      expression: 'v_t/sqrt(3)',
      source: oneSided,
    },
  ],
})
