import { chapter, derived } from './chapter.js'

const slope = derived('derivatives of the density of moist air')

/** How the logarithm of the density of moist air changes with the logged conditions. */
export const airSensitivity = chapter({
  title: 'Sensitivities of the air density',
  inputs: [
    { symbol: 'T', name: 'absolute temperature', unit: 'K' },
    { symbol: 'p_v', name: 'partial pressure of water vapour', unit: 'Pa' },
    { symbol: 'phi', name: 'relative humidity', unit: '1' },
    { symbol: 'p_bar', name: 'barometric pressure', unit: 'Pa' },
  ],
  formulas: [
    {
      symbol: 'p_d',
      name: 'barometric pressure minus the correction for vapour',
      unit: 'Pa',
      expression: 'p_bar - k_v*p_v',
      source: slope,
    },
    {
      symbol: 'g_T',
      name: 'change of ln density with temperature',
      unit: '1/K',
      expression: '0 - 1/T - k_v*p_v*(b_v/T^2 - c_v/T)/p_d',
      source: slope,
    },
    {
      symbol: 'g_p',
      name: 'change of ln density with barometric pressure',
      unit: '1/Pa',
      expression: '1/p_d',
      source: slope,
    },
    {
      symbol: 'g_h',
      name: 'change of ln density with relative humidity',
      unit: '1',
      expression: '0 - k_v*(p_v/phi)/p_d',
      source: slope,
    },
  ],
})

/** How the correction to reference density changes with the exponent, for methods that correct no viscosity. */
export const densityCorrectionSlope = chapter({
  title: 'Correction to reference density and the exponent',
  inputs: [{ symbol: 'rho_x', name: 'density of the air going through the leaks', unit: 'kg/m³' }],
  formulas: [
    {
      symbol: 'k_n',
      name: 'change of ln of the correction to reference air with the exponent',
      unit: '1',
      expression: '0 - log(rho_x/rho_0)',
      source: slope,
    },
  ],
})

/** Expected scatter of the single readings, made relative. */
export const readingUncertainty = chapter({
  title: 'Expected scatter of the readings',
  inputs: [
    { symbol: 'dp', name: 'induced pressure difference', unit: 'Pa', rows: true },
    { symbol: 'u_p', name: 'standard uncertainty of a pressure reading', unit: 'Pa', rows: true },
  ],
  formulas: [
    {
      symbol: 'u_x',
      name: 'relative standard uncertainty of the pressure difference',
      unit: '1',
      expression: 'u_p ./ dp',
      source: derived('JCGM 100:2008, 5.1.6'),
    },
  ],
})

/** Scatter of averaged flows, made relative. */
export const flowAverageUncertainty = chapter({
  title: 'Scatter of the averaged flows',
  inputs: [
    { symbol: 'q_m', name: 'measured air flow', unit: 'm³/h', rows: true },
    { symbol: 'u_q', name: 'standard uncertainty of the averaged flow', unit: 'm³/h', rows: true },
  ],
  formulas: [
    {
      symbol: 'u_y',
      name: 'relative standard uncertainty of the flow',
      unit: '1',
      expression: 'u_q ./ q_m',
      source: derived('JCGM 100:2008, 5.1.6'),
    },
  ],
})

/** Scatter of flows from averaged device pressures, made relative. */
export const deviceAverageUncertainty = chapter({
  title: 'Scatter of the flows from averaged device pressures',
  inputs: [
    { symbol: 'dp_d', name: 'device pressure', unit: 'Pa', rows: true },
    { symbol: 'u_d', name: 'standard uncertainty of the averaged device pressure', unit: 'Pa', rows: true },
    { symbol: 'm_d', name: 'exponent of the range', unit: '1', rows: true },
  ],
  formulas: [
    {
      symbol: 'u_y',
      name: 'relative standard uncertainty of the flow',
      unit: '1',
      expression: 'm_d .* u_d ./ abs(dp_d)',
      source: derived('JCGM 100:2008, 5.1.6, for a flow proportional to a power of the device pressure'),
    },
  ],
})

/** A standard uncertainty made relative to its quantity. */
export const relativeUncertainty = chapter({
  title: 'Relative uncertainty',
  inputs: [
    { symbol: 'u_V', name: 'standard uncertainty of the internal volume', unit: 'm³' },
    { symbol: 'V', name: 'internal volume', unit: 'm³' },
  ],
  formulas: [
    {
      symbol: 'u',
      name: 'relative standard uncertainty of the internal volume',
      unit: '1',
      expression: 'u_V/V',
      source: derived('JCGM 100:2008, 5.1.6'),
    },
  ],
})

const evenSpread = derived('uniform distribution between the limits of error, JCGM 100:2008, 4.3.7')

/** An accuracy stated as a largest error, in the unit of the value. */
export const statedAccuracy = chapter({
  title: 'Standard uncertainty from a stated accuracy',
  inputs: [{ symbol: 'a_u', name: 'accuracy stated, largest error', unit: 'as the value' }],
  formulas: [
    {
      symbol: 'u_a',
      name: 'standard uncertainty',
      unit: 'as the value',
      expression: 'a_u/sqrt(3)',
      source: evenSpread,
    },
  ],
})

/** An accuracy stated as a share of the reading, as an absolute error, or as both: the larger of the two counts. */
export const statedShare = chapter({
  title: 'Relative standard uncertainty from a stated accuracy',
  inputs: [
    { symbol: 'a_r', name: 'accuracy stated, share of the reading', unit: '1' },
    { symbol: 'a_a', name: 'accuracy stated, in the unit of the readings', unit: 'as the readings' },
    { symbol: 'v_r', name: 'readings', unit: 'as the readings', rows: true },
  ],
  formulas: [
    {
      symbol: 'a_l',
      name: 'largest error as a share of the mean reading',
      unit: '1',
      expression: 'max(a_r, a_a/mean(v_r))',
      source: derived('the larger of the two counts'),
    },
    {
      symbol: 'u_l',
      name: 'relative standard uncertainty',
      unit: '1',
      expression: 'a_l/sqrt(3)',
      source: evenSpread,
    },
  ],
})
