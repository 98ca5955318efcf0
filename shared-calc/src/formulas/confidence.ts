import type { Formula, Input } from '../engine/index.js'
import { chapter, definition, derived, memory, read } from './chapter.js'

const annex = read('ISO 9972:2015 Annex C; Roulet 2008, eq. 7.13–7.21')

const outliers = memory('Cook and Weisberg, Residuals and Influence in Regression, 1982, ch. 2')

const given: readonly Input[] = [
  { symbol: 'x', name: 'logarithm of the pressure difference', unit: '1', rows: true },
  { symbol: 'e', name: 'residual of the fit, in logarithms', unit: '1', rows: true },
  { symbol: 'N', name: 'number of readings', unit: '1' },
  { symbol: 'xbar', name: 'mean of x', unit: '1' },
  { symbol: 'S_xx', name: 'variance of x', unit: '1' },
  { symbol: 'n', name: 'air flow exponent', unit: '1' },
  { symbol: 'lnC', name: 'logarithm of the air flow coefficient', unit: '1' },
]

const errors: readonly Formula[] = [
  {
    symbol: 't_95',
    name: 'Student t for a 95 % interval',
    unit: '1',
    expression: 'student_t(alpha, N - 2)',
    source: annex,
  },
  {
    symbol: 'SSE',
    name: 'sum of the squared residuals',
    unit: '1',
    expression: 'sum(e .^ 2)',
    source: annex,
  },
  {
    symbol: 'S_n',
    name: 'standard error of the exponent',
    unit: '1',
    expression: 'sqrt(SSE/((N - 2)*(N - 1)*S_xx))',
    source: annex,
  },
]

const ends: readonly Formula[] = [
  { symbol: 'n_lo', name: 'exponent, lower end', unit: '1', expression: 'n - t_95*S_n', source: annex },
  { symbol: 'n_hi', name: 'exponent, upper end', unit: '1', expression: 'n + t_95*S_n', source: annex },
  {
    symbol: 'C_lo',
    name: 'air flow coefficient, lower end',
    unit: 'm³/(h·Paⁿ)',
    expression: 'exp(lnC - t_95*S_lnC)',
    source: annex,
  },
  {
    symbol: 'C_hi',
    name: 'air flow coefficient, upper end',
    unit: 'm³/(h·Paⁿ)',
    expression: 'exp(lnC + t_95*S_lnC)',
    source: annex,
  },
]

const left: Formula = {
  symbol: 'd_e',
  name: 'leave-one-out residual sum of squares, times (1 − leverage)',
  unit: '1',
  expression: 'SSE*(1 - h_x) - e .^ 2',
  source: outliers,
}

/** Scatter of the fit: standard errors and 95 % intervals of exponent and coefficient. It says nothing of wind or bias. */
export const fitScatter = chapter({
  title: 'Scatter of the fit',
  inputs: given,
  formulas: [
    ...errors,
    {
      symbol: 'S_lnC',
      name: 'standard error of ln C',
      unit: '1',
      expression: 'S_n*sqrt(sum(x .^ 2)/N)',
      source: annex,
    },
    ...ends,
    {
      symbol: 'h_x',
      name: 'leverage of a reading',
      unit: '1',
      expression: '1/N + (x - xbar) .^ 2/((N - 1)*S_xx)',
      source: outliers,
    },
    left,
  ],
})

const weighted = derived('weighted sums; equal weights give the unweighted ones')

/** The same for a weighted fit, whose residuals come weighted already. */
export const weightedFitScatter = chapter({
  title: 'Scatter of the weighted fit',
  inputs: [...given, { symbol: 'w', name: 'weight of a reading, 1 on average', unit: '1', rows: true }],
  formulas: [
    ...errors,
    {
      symbol: 'S_lnC',
      name: 'standard error of ln C',
      unit: '1',
      expression: 'S_n*sqrt(sum(w .* x .^ 2)/N)',
      source: weighted,
    },
    ...ends,
    {
      symbol: 'h_x',
      name: 'leverage of a reading',
      unit: '1',
      expression: 'w .* (1/N + (x - xbar) .^ 2/((N - 1)*S_xx))',
      source: weighted,
    },
    left,
  ],
})

/** Externally studentised residuals: how far each reading lies from the line through all the others. */
export const studentisedResiduals = chapter({
  title: 'Residuals',
  inputs: [
    { symbol: 'e', name: 'residual of the fit, in logarithms', unit: '1', rows: true },
    {
      symbol: 'd_e',
      name: 'leave-one-out residual sum of squares, times (1 − leverage)',
      unit: '1',
      rows: true,
    },
    { symbol: 'N', name: 'number of readings', unit: '1' },
  ],
  formulas: [
    {
      symbol: 't_e',
      name: 'externally studentised residual',
      unit: '1',
      expression: 'e .* sqrt((N - 3) ./ d_e)',
      source: outliers,
    },
  ],
})

/** How far each reading lies from the fitted curve, as the report lists it. */
export const fitDeviation = chapter({
  title: 'Deviation from the fitted curve',
  inputs: [
    { symbol: 'q_env', name: 'air flow through the envelope', unit: 'm³/h', rows: true },
    { symbol: 'q_fit', name: 'flow on the fitted curve', unit: 'm³/h', rows: true },
  ],
  formulas: [
    {
      symbol: 'd_fit',
      name: 'deviation from the fitted curve',
      unit: '1',
      expression: 'q_env ./ q_fit - 1',
      source: definition('share of the flow on the curve'),
    },
  ],
})
