import type { Formula, Input } from '../engine/index.js'
import { chapter, definition, derived, memory, read } from './chapter.js'

const fit = read('Roulet 2008, p. 148 and eq. 7.13–7.21')
const clause = definition('measured pressure difference minus the zero-flow pressure')

/** Inputs of every curve. */
export const readingInputs: readonly Input[] = [
  { symbol: 'dp_m', name: 'measured pressure difference', unit: 'Pa', rows: true },
  { symbol: 'q_m', name: 'measured air flow', unit: 'm³/h', rows: true },
  { symbol: 'sign', name: 'sign with which the run was logged', unit: '1' },
  { symbol: 'dp_01', name: 'mean zero-flow pressure before', unit: 'Pa' },
  { symbol: 'dp_02', name: 'mean zero-flow pressure after', unit: 'Pa' },
  { symbol: 'rho_d', name: 'density of the air in the device', unit: 'kg/m³' },
  { symbol: 'rho_x', name: 'density of the air going through the leaks', unit: 'kg/m³' },
]

/** From readings to points of the curve, in logarithms. */
export const curvePoints: readonly Formula[] = [
  {
    symbol: 'dp_0',
    name: 'zero-flow pressure',
    unit: 'Pa',
    expression: '(dp_01 + dp_02)/2',
    source: memory('ISO 9972:2015, 5.3.3'),
  },
  {
    symbol: 'dp',
    name: 'induced pressure difference',
    unit: 'Pa',
    expression: 'sign*(dp_m - dp_0)',
    source: clause,
  },
  {
    symbol: 'q_env',
    name: 'air flow through the envelope',
    unit: 'm³/h',
    expression: 'q_m*(rho_d/rho_x)',
    source: read('UK technical standard on EN 13829 (2010); Roulet 2008, p. 64'),
  },
  {
    symbol: 'x',
    name: 'logarithm of the pressure difference',
    unit: '1',
    expression: 'log(dp)',
    source: fit,
  },
  { symbol: 'y', name: 'logarithm of the envelope flow', unit: '1', expression: 'log(q_env)', source: fit },
  { symbol: 'N', name: 'number of readings', unit: '1', expression: 'count(x)', source: fit },
]

const leastSquares: readonly Formula[] = [
  { symbol: 'xbar', name: 'mean of x', unit: '1', expression: 'mean(x)', source: fit },
  { symbol: 'ybar', name: 'mean of y', unit: '1', expression: 'mean(y)', source: fit },
  {
    symbol: 'S_xx',
    name: 'variance of x',
    unit: '1',
    expression: 'sum((x - xbar) .^ 2)/(N - 1)',
    source: fit,
  },
  {
    symbol: 'S_yy',
    name: 'variance of y',
    unit: '1',
    expression: 'sum((y - ybar) .^ 2)/(N - 1)',
    source: fit,
  },
  {
    symbol: 'S_xy',
    name: 'covariance of x and y',
    unit: '1',
    expression: 'sum((x - xbar) .* (y - ybar))/(N - 1)',
    source: fit,
  },
]

const line: readonly Formula[] = [
  { symbol: 'n', name: 'air flow exponent', unit: '1', expression: 'S_xy/S_xx', source: fit },
  {
    symbol: 'lnC',
    name: 'logarithm of the air flow coefficient',
    unit: '1',
    expression: 'ybar - n*xbar',
    source: fit,
  },
  {
    symbol: 'C_env',
    name: 'air flow coefficient',
    unit: 'm³/(h·Paⁿ)',
    expression: 'exp(lnC)',
    source: fit,
  },
  {
    symbol: 'r_2',
    name: 'coefficient of determination r²',
    unit: '1',
    expression: 'S_xy^2/(S_xx*S_yy)',
    source: fit,
  },
  {
    symbol: 'q_fit',
    name: 'flow on the fitted curve',
    unit: 'm³/h',
    expression: 'C_env*dp .^ n',
    source: fit,
  },
]

/** From readings to the leakage curve of one direction: induced pressure, envelope flow, least squares in logarithms. */
export const leakageCurve = chapter({
  title: 'Leakage curve',
  inputs: readingInputs,
  formulas: [
    ...curvePoints,
    ...leastSquares,
    ...line,
    {
      symbol: 'e',
      name: 'residual of the fit, in logarithms',
      unit: '1',
      expression: 'y - lnC - n*x',
      source: fit,
    },
  ],
})

const weighted = memory('CAN/CGSB-149.10: fit weighted by the square of the flow')
const weightedSum = derived('weighted sums; equal weights give the unweighted ones')

/** The same with the readings weighted by the square of their flow: the large flows count most. */
export const weightedLeakageCurve = chapter({
  title: 'Leakage curve, weighted by flow squared',
  inputs: readingInputs,
  formulas: [
    ...curvePoints,
    {
      symbol: 'w',
      name: 'weight of a reading, 1 on average',
      unit: '1',
      expression: 'N*q_env .^ 2/sum(q_env .^ 2)',
      source: weighted,
    },
    {
      symbol: 'xbar',
      name: 'weighted mean of x',
      unit: '1',
      expression: 'sum(w .* x)/N',
      source: weightedSum,
    },
    {
      symbol: 'ybar',
      name: 'weighted mean of y',
      unit: '1',
      expression: 'sum(w .* y)/N',
      source: weightedSum,
    },
    {
      symbol: 'S_xx',
      name: 'weighted variance of x',
      unit: '1',
      expression: 'sum(w .* (x - xbar) .^ 2)/(N - 1)',
      source: weightedSum,
    },
    {
      symbol: 'S_yy',
      name: 'weighted variance of y',
      unit: '1',
      expression: 'sum(w .* (y - ybar) .^ 2)/(N - 1)',
      source: weightedSum,
    },
    {
      symbol: 'S_xy',
      name: 'weighted covariance of x and y',
      unit: '1',
      expression: 'sum(w .* (x - xbar) .* (y - ybar))/(N - 1)',
      source: weightedSum,
    },
    ...line,
    {
      symbol: 'e',
      name: 'weighted residual of the fit, in logarithms',
      unit: '1',
      expression: 'sqrt(w) .* (y - lnC - n*x)',
      source: weightedSum,
    },
  ],
})
