import { chapter, definition, derived, memory } from './chapter.js'

const inverse = derived('the correction of ISO 9972:2015, 6.2, reversed')

/** The leakage that just meets a limit. */
export const allowedLeakage = chapter({
  title: 'Leakage that just meets the target',
  inputs: [
    { symbol: 'L', name: 'limit', unit: 'as the target' },
    { symbol: 'B', name: 'basis of the target (volume or area; 1 for a flow)', unit: 'm³ or m²' },
  ],
  formulas: [
    {
      symbol: 'q_t',
      name: 'air leakage rate that just meets the target',
      unit: 'm³/h',
      expression: 'L*B',
      source: derived('definition of the quantity limited'),
    },
  ],
})

/** Flow to expect at each pressure if the building just meets the target, for one exponent. */
export const expectedFlows = chapter({
  title: 'Expected flow',
  inputs: [
    { symbol: 'q_t', name: 'air leakage rate that just meets the target', unit: 'm³/h' },
    { symbol: 'dp_r', name: 'reference pressure difference', unit: 'Pa' },
    { symbol: 'n', name: 'air flow exponent', unit: '1' },
    { symbol: 'dp', name: 'induced pressure difference', unit: 'Pa', rows: true },
    { symbol: 'rho_d', name: 'density of the air in the device', unit: 'kg/m³' },
    { symbol: 'rho_x', name: 'density of the air going through the leaks', unit: 'kg/m³' },
  ],
  formulas: [
    {
      symbol: 'q_L',
      name: 'air leakage rate at reference air density',
      unit: 'm³/h',
      expression: 'q_t*(dp/dp_r) .^ n',
      source: definition('power law of the leakage curve'),
    },
    {
      symbol: 'q_m',
      name: 'expected flow at the device',
      unit: 'm³/h',
      expression: 'q_L*(rho_0/rho_x)^(1 - n)*(rho_x/rho_d)',
      source: inverse,
    },
  ],
})

/**
 * What a range can measure by itself: the leakage whose flows stay in the range from the lowest to the highest
 * pressure.
 */
export const provableLeakage = chapter({
  title: 'Leakage that a range can measure',
  inputs: [
    { symbol: 'q_low', name: 'lowest flow of the range', unit: 'm³/h', rows: true },
    { symbol: 'q_top', name: 'highest flow of the range', unit: 'm³/h', rows: true },
    { symbol: 'dp_low', name: 'lowest pressure difference to set', unit: 'Pa' },
    { symbol: 'dp_top', name: 'highest pressure difference to set', unit: 'Pa' },
    { symbol: 'dp_r', name: 'reference pressure difference', unit: 'Pa' },
    { symbol: 'n_hi', name: 'highest expected exponent', unit: '1' },
    { symbol: 'rho_d', name: 'density of the air in the device', unit: 'kg/m³' },
    { symbol: 'rho_x', name: 'density of the air going through the leaks', unit: 'kg/m³' },
    { symbol: 'V', name: 'internal volume', unit: 'm³' },
  ],
  formulas: [
    {
      symbol: 'f_d',
      name: 'ratio of air leakage rate to flow at the device',
      unit: '1',
      expression: '(rho_d/rho_x)*(rho_x/rho_0)^(1 - n_hi)',
      source: memory('ISO 9972:2015, 6.2'),
    },
    {
      symbol: 'q_least',
      name: 'smallest air leakage rate at the reference pressure',
      unit: 'm³/h',
      expression: 'q_low*f_d*(dp_r/dp_low)^n_hi',
      source: derived('power law through the lowest flow at the lowest pressure'),
    },
    {
      symbol: 'q_most',
      name: 'largest air leakage rate at the reference pressure',
      unit: 'm³/h',
      expression: 'q_top*f_d*(dp_r/dp_top)^n_hi',
      source: derived('power law through the highest flow at the highest pressure'),
    },
    {
      symbol: 'n_least',
      name: 'smallest air change rate it can measure',
      unit: '1/h',
      expression: 'q_least/V',
      source: derived('n = q/V'),
    },
    {
      symbol: 'n_most',
      name: 'largest air change rate it can measure',
      unit: '1/h',
      expression: 'q_most/V',
      source: derived('n = q/V'),
    },
  ],
})
