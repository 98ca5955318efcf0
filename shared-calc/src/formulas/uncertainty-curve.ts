import type { Formula, Input } from '../engine/index.js'
import { chapter, derived } from './chapter.js'
import { scatterOfLine } from './uncertainty-scatter.js'

const propagation = derived('first-order propagation, JCGM 100:2008, 5.1.2; checked against Monte Carlo')

/** Inputs that all sensitivity chapters share. */
const surroundings: readonly Input[] = [
  { symbol: 'dp', name: 'induced pressure difference', unit: 'Pa', rows: true },
  { symbol: 'u_x', name: 'relative standard uncertainty of the pressure difference', unit: '1', rows: true },
  { symbol: 'u_y', name: 'relative standard uncertainty of the flow', unit: '1', rows: true },
  {
    symbol: 'a_d',
    name: 'exponent of the density in the device in the flow',
    unit: '1',
    rows: true,
  },
  {
    symbol: 'o_r',
    name: '1 for a reading in another range of the flow device than most, else 0',
    unit: '1',
    rows: true,
  },
  { symbol: 'n', name: 'air flow exponent', unit: '1' },
  { symbol: 'dp_r', name: 'reference pressure difference', unit: 'Pa' },
  { symbol: 'k_n', name: 'change of ln of the correction to reference air with the exponent', unit: '1' },
  { symbol: 'k_T', name: 'change of ln of the viscosity correction with the temperature', unit: '1/K' },
  { symbol: 'd_s', name: 'sign of the direction', unit: '1' },
  { symbol: 'g_Td', name: 'change of ln density with temperature, device', unit: '1/K' },
  { symbol: 'g_Tx', name: 'change of ln density with temperature, leaks', unit: '1/K' },
  { symbol: 'g_pd', name: 'change of ln density with barometric pressure, device', unit: '1/Pa' },
  { symbol: 'g_px', name: 'change of ln density with barometric pressure, leaks', unit: '1/Pa' },
  { symbol: 'g_hd', name: 'change of ln density with humidity, device', unit: '1' },
  { symbol: 'g_hx', name: 'change of ln density with humidity, leaks', unit: '1' },
]

const reference: Formula = {
  symbol: 'L_r',
  name: 'change of ln of the leakage rate with the exponent, ln C held',
  unit: '1',
  expression: 'log(dp_r) + k_n',
  source: propagation,
}

/** From the sensitivities to single readings, c_x and c_y, to the sensitivities to causes that all readings share. */
const shared: readonly Formula[] = [
  reference,
  {
    symbol: 's_g',
    name: 'sensitivity to the pressure gauge',
    unit: '1',
    expression: 'sum(c_x)',
    source: propagation,
  },
  {
    symbol: 's_r',
    name: 'sensitivity to a step between the ranges of the flow device',
    unit: '1',
    expression: 'sum(c_y .* o_r)',
    source: propagation,
  },
  {
    symbol: 's_0',
    name: 'sensitivity to the zero-flow pressure of the run',
    unit: '1/Pa',
    expression: '0 - sum(c_x ./ dp)',
    source: propagation,
  },
  {
    symbol: 's_w',
    name: 'sensitivity to a shift of the mean pressure around the envelope (inside − outside)',
    unit: '1/Pa',
    expression: '(0 - d_s)*s_0',
    source: propagation,
  },
  {
    symbol: 's_v',
    name: 'sensitivity to the variance of the pressure around the envelope',
    unit: '1/Pa²',
    expression: 'n*(n - 1)/2*sum(c_y ./ dp .^ 2)',
    source: derived('power law expanded to second order in the pressure of each leak'),
  },
  {
    symbol: 's_m',
    name: 'sensitivity to the curvature of ln q against ln Δp',
    unit: '1',
    expression: '0.5*sum(c_y .* (log(dp) - log(dp_r)) .^ 2)',
    source: derived('a parabola that touches the true curve at the reference pressure, through the fit'),
  },
  {
    symbol: 's_d',
    name: 'sensitivity to ln of the density in the device',
    unit: '1',
    expression: 'sum(c_y .* a_d)',
    source: propagation,
  },
  {
    symbol: 's_x',
    name: 'sensitivity to ln of the density in the leaks',
    unit: '1',
    expression: '0 - n',
    source: derived(
      'envelope flow is proportional to the density in the leaks to the power −1, the correction to the power 1 − n',
    ),
  },
  {
    symbol: 's_Td',
    name: 'sensitivity to the temperature on the side of the device',
    unit: '1/K',
    expression: 's_d*g_Td',
    source: propagation,
  },
  {
    symbol: 's_Tx',
    name: 'sensitivity to the temperature on the side of the leaks',
    unit: '1/K',
    expression: 's_x*g_Tx + k_T',
    source: propagation,
  },
  {
    symbol: 's_p',
    name: 'sensitivity to the barometric pressure',
    unit: '1/Pa',
    expression: 's_d*g_pd + s_x*g_px',
    source: propagation,
  },
  {
    symbol: 's_hd',
    name: 'sensitivity to the humidity on the side of the device',
    unit: '1',
    expression: 's_d*g_hd',
    source: propagation,
  },
  {
    symbol: 's_hx',
    name: 'sensitivity to the humidity on the side of the leaks',
    unit: '1',
    expression: 's_x*g_hx',
    source: propagation,
  },
  {
    symbol: 'u_b',
    name: 'effect on the leakage rate of the expected scatter',
    unit: '1',
    expression: 'sqrt(sum((c_x .* u_x) .^ 2 + (c_y .* u_y) .^ 2))',
    source: propagation,
  },
]

const found: readonly Formula[] = [
  {
    symbol: 'u_r',
    name: 'scatter of the readings used: found or expected, whichever is larger',
    unit: '1',
    expression: 'max(u_s, u_b)',
    source: derived('the same scatter is not counted twice'),
  },
  {
    symbol: 'r_r',
    name: 'its fourth power divided by the degrees of freedom, for the effective degrees of freedom',
    unit: '1',
    expression: 'u_s^4/nu_s',
    source: derived('Welch–Satterthwaite, JCGM 100:2008, G.4.1; only the found scatter is uncertain'),
  },
]

/** Sensitivities of a least-squares line through the logarithms, weighted or not (weights 1). */
export const fittedLineSensitivity = chapter({
  title: 'Sensitivities of the leakage rate',
  inputs: [
    ...surroundings,
    { symbol: 'x', name: 'logarithm of the pressure difference', unit: '1', rows: true },
    { symbol: 'y', name: 'logarithm of the envelope flow', unit: '1', rows: true },
    { symbol: 'w', name: 'weight of a reading, 1 on average', unit: '1', rows: true },
    { symbol: 'N', name: 'number of readings', unit: '1' },
    { symbol: 'xbar', name: 'mean of x', unit: '1' },
    { symbol: 'ybar', name: 'mean of y', unit: '1' },
    { symbol: 'S_xx', name: 'variance of x', unit: '1' },
    { symbol: 'SSE', name: 'sum of the squared residuals', unit: '1' },
  ],
  formulas: [
    {
      symbol: 'c_y',
      name: 'change of ln of the leakage rate with ln of the flow',
      unit: '1',
      expression: 'w .* (1/N + (L_r - xbar)*(x - xbar)/((N - 1)*S_xx))',
      source: propagation,
    },
    {
      symbol: 'c_x',
      name: 'change of ln of the leakage rate with ln of the pressure difference',
      unit: '1',
      expression: 'w .* ((L_r - xbar)*((y - ybar) - 2*n*(x - xbar))/((N - 1)*S_xx) - n/N)',
      source: propagation,
    },
    ...shared,
    ...scatterOfLine,
  ],
})

/** Sensitivities of a curve through the mean of repeated readings at one station, the exponent assumed. */
export const onePointSensitivity = chapter({
  title: 'Sensitivities of the leakage rate, one point',
  inputs: [
    ...surroundings,
    { symbol: 'q_env', name: 'air flow through the envelope', unit: 'm³/h', rows: true },
    { symbol: 'x_1', name: 'logarithm of the mean pressure difference', unit: '1' },
    { symbol: 'N', name: 'number of readings', unit: '1' },
    { symbol: 'SSE', name: 'sum of the squared residuals', unit: '1' },
  ],
  formulas: [
    {
      symbol: 'c_y',
      name: 'change of ln of the leakage rate with ln of the flow',
      unit: '1',
      expression: 'q_env/sum(q_env)',
      source: propagation,
    },
    {
      symbol: 'c_x',
      name: 'change of ln of the leakage rate with ln of the pressure difference',
      unit: '1',
      expression: '(0 - n)*dp/sum(dp)',
      source: propagation,
    },
    ...shared,
    {
      symbol: 's_n',
      name: 'sensitivity to the assumed exponent',
      unit: '1',
      expression: 'L_r - x_1',
      source: propagation,
    },
    {
      symbol: 'nu_s',
      name: 'degrees of freedom of the scatter, 1 where a single reading has none',
      unit: '1',
      expression: 'max(N - 1, 1)',
      source: propagation,
    },
    {
      symbol: 's_e',
      name: 'standard deviation of the residuals',
      unit: '1',
      expression: 'sqrt(SSE/nu_s)',
      source: propagation,
    },
    {
      symbol: 'u_s',
      name: 'effect on the leakage rate of the scatter found',
      unit: '1',
      expression: 's_e*sqrt(sum(c_y .^ 2))',
      source: propagation,
    },
    ...found,
  ],
})

/** Sensitivities of the curve through the means of two stations. */
export const twoPointSensitivity = chapter({
  title: 'Sensitivities of the leakage rate, two points',
  inputs: [
    ...surroundings,
    { symbol: 'q_env', name: 'air flow through the envelope', unit: 'm³/h', rows: true },
    { symbol: 'hi', name: '1 for a reading of the upper station, else 0', unit: '1', rows: true },
    { symbol: 'x_1', name: 'logarithm of the mean pressure difference, upper station', unit: '1' },
    { symbol: 'x_2', name: 'logarithm of the mean pressure difference, lower station', unit: '1' },
    { symbol: 'N', name: 'number of readings', unit: '1' },
    { symbol: 'SSE', name: 'sum of the squared residuals', unit: '1' },
  ],
  formulas: [
    {
      symbol: 'f_1',
      name: 'share of the upper station, more than 1 above it',
      unit: '1',
      expression: '(L_r - x_2)/(x_1 - x_2)',
      source: propagation,
    },
    {
      symbol: 'c_y',
      name: 'change of ln of the leakage rate with ln of the flow',
      unit: '1',
      expression: 'f_1*hi .* q_env/sum(hi .* q_env) + (1 - f_1)*(1 - hi) .* q_env/sum((1 - hi) .* q_env)',
      source: propagation,
    },
    {
      symbol: 'c_x',
      name: 'change of ln of the leakage rate with ln of the pressure difference',
      unit: '1',
      expression: '(0 - n)*(f_1*hi .* dp/sum(hi .* dp) + (1 - f_1)*(1 - hi) .* dp/sum((1 - hi) .* dp))',
      source: propagation,
    },
    ...shared,
    {
      symbol: 'nu_s',
      name: 'degrees of freedom of the scatter',
      unit: '1',
      expression: 'max(N - 2, 1)',
      source: propagation,
    },
    {
      symbol: 's_e',
      name: 'standard deviation of the residuals',
      unit: '1',
      expression: 'sqrt(SSE/nu_s)',
      source: propagation,
    },
    {
      symbol: 'u_s',
      name: 'effect on the leakage rate of the scatter found',
      unit: '1',
      expression: 's_e*sqrt(sum(c_y .^ 2))',
      source: propagation,
    },
    ...found,
  ],
})
