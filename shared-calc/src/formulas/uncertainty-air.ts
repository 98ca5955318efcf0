import { chapter, derived } from './chapter.js'

const slope = derived('derivatives of the density of moist air')

/** How the logarithm of the density of moist air moves with what was logged. */
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
      name: 'barometric pressure less the correction for vapour',
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

/** How the correction to reference density moves with the exponent, for methods that correct no viscosity. */
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

const model = derived('published model errors taken as the ends of an even spread: half width over √3')

/** What wind does to a test beside scatter: pressures differ round the envelope, and one gauge shows one of them. */
export const windUncertainty = chapter({
  title: 'Uncertainty from wind',
  inputs: [
    { symbol: 'U_w', name: 'wind speed', unit: 'm/s' },
    { symbol: 'k_w', name: 'shift of the mean pressure, share of the dynamic pressure', unit: '1' },
    {
      symbol: 'k_s',
      name: 'spread of the pressure round the envelope, share of the dynamic pressure',
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
      symbol: 'u_v',
      name: 'standard uncertainty of the variance of the pressure round the envelope',
      unit: 'Pa²',
      expression: '(k_s*p_w)^2',
      source: model,
    },
  ],
})

/** Wind speed from a wind force, where no speed was logged. */
export const windFromForce = chapter({
  title: 'Wind speed from wind force',
  inputs: [{ symbol: 'B_f', name: 'wind force', unit: 'Bft' }],
  formulas: [
    {
      symbol: 'U_w',
      name: 'wind speed at 10 m over open ground',
      unit: 'm/s',
      expression: '0.836*B_f^1.5',
      source: { text: 'World Meteorological Organization, Beaufort scale', seen: 'memory' },
    },
  ],
})

/** Spread of the zero-flow readings of one period. */
export const zeroFlowSpread = chapter({
  title: 'Scatter of the zero-flow pressure',
  inputs: [
    { symbol: 'dp_z', name: 'zero-flow pressure difference', unit: 'Pa', rows: true },
    { symbol: 'dp_m0', name: 'mean zero-flow pressure of the period', unit: 'Pa' },
  ],
  formulas: [
    {
      symbol: 'v_z',
      name: 'variance of the mean',
      unit: 'Pa²',
      expression: 'sum((dp_z - dp_m0) .^ 2)/((count(dp_z) - 1)*count(dp_z))',
      source: derived('JCGM 100:2008, 4.2.3'),
    },
  ],
})

/** What the zero-flow pressure does between the two periods of a run, pooled over the runs. */
export const zeroFlowChange = chapter({
  title: 'Change of the zero-flow pressure',
  inputs: [
    { symbol: 'dp_01', name: 'mean zero-flow pressure before', unit: 'Pa', rows: true },
    { symbol: 'dp_02', name: 'mean zero-flow pressure after', unit: 'Pa', rows: true },
  ],
  formulas: [
    {
      symbol: 'v_d',
      name: 'variance of the mean of two periods, from the change between them',
      unit: 'Pa²',
      expression: 'sum((dp_01 - dp_02) .^ 2)/(4*count(dp_01))',
      source: derived('mean of two observations, pooled, JCGM 100:2008, 4.2.3 and 4.2.4'),
    },
  ],
})

/** The zero-flow pressure of a run: scatter of both periods, and what changes between them. */
export const zeroFlowUncertainty = chapter({
  title: 'Uncertainty of the zero-flow pressure',
  inputs: [
    { symbol: 'v_1', name: 'variance of the mean before', unit: 'Pa²' },
    { symbol: 'v_2', name: 'variance of the mean after', unit: 'Pa²' },
    {
      symbol: 'v_d',
      name: 'variance of the mean of two periods, from the change between them',
      unit: 'Pa²',
    },
    { symbol: 'u_z', name: 'further standard uncertainty of the zero-flow pressure', unit: 'Pa' },
  ],
  formulas: [
    {
      symbol: 'u_0',
      name: 'standard uncertainty of the zero-flow pressure',
      unit: 'Pa',
      expression: 'sqrt((v_1 + v_2)/4 + v_d + u_z^2)',
      source: derived('JCGM 100:2008, 5.1.2'),
    },
    {
      symbol: 'r_0',
      name: 'fourth power of what the changes show, over a degree of freedom for each run',
      unit: 'Pa⁴',
      expression: 'v_d^2',
      source: derived('Welch–Satterthwaite, JCGM 100:2008, G.4.1'),
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
      source: derived('JCGM 100:2008, 5.1.6, for a flow that goes with a power of the device pressure'),
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
