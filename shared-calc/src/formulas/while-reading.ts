import { chapter, derived, practice, read } from './chapter.js'

const annex = read('ISO 9972:2015 Annex C; Roulet 2008, eq. 7.13–7.21')

/** By how much one further reading of the same scatter would narrow what the scatter of the fit adds to the result. */
export const furtherReading = chapter({
  title: 'What one further reading would bring',
  inputs: [
    { symbol: 'N', name: 'number of readings', unit: '1' },
    { symbol: 'xbar', name: 'mean of x', unit: '1' },
    { symbol: 'S_xx', name: 'variance of x', unit: '1' },
    { symbol: 'SSE', name: 'sum of the squared residuals', unit: '1' },
    { symbol: 'dp_r', name: 'reference pressure difference', unit: 'Pa' },
    { symbol: 'dp_next', name: 'pressure difference of the further reading', unit: 'Pa' },
  ],
  formulas: [
    {
      symbol: 's_e',
      name: 'standard deviation of the residuals',
      unit: '1',
      expression: 'sqrt(SSE/(N - 2))',
      source: annex,
    },
    {
      symbol: 'h_now',
      name: 'half-width of ln q now',
      unit: '1',
      expression: 'student_t(alpha, N - 2)*s_e*sqrt(1/N + (log(dp_r) - xbar)^2/((N - 1)*S_xx))',
      source: annex,
    },
    {
      symbol: 'x_n',
      name: 'mean of x with the further reading',
      unit: '1',
      expression: '(N*xbar + log(dp_next))/(N + 1)',
      source: derived('updated mean'),
    },
    {
      symbol: 'Q_n',
      name: 'sum of squares of x with the further reading',
      unit: '1',
      expression: '(N - 1)*S_xx + (N/(N + 1))*(log(dp_next) - xbar)^2',
      source: derived('updated sum of squares'),
    },
    {
      symbol: 'h_next',
      name: 'half-width of ln q with the further reading',
      unit: '1',
      expression: 'student_t(alpha, N - 1)*s_e*sqrt(1/(N + 1) + (log(dp_r) - x_n)^2/Q_n)',
      source: derived('interval of the fitted line, if the scatter stays the same'),
    },
    {
      symbol: 'g_h',
      name: 'narrowing, share of the result',
      unit: '1',
      expression: 'h_now - h_next',
      source: practice,
    },
  ],
})

/**
 * Interval of a figure while readings are too few for a fit. Each reading alone gives the figure with an interval of its
 * own; the figure is their geometric mean. Taking the mean of the ends as well counts all errors as shared by the
 * readings, which is right for the instruments and the exponent and never too narrow for the rest.
 */
export const intervalOfFewReadings = chapter({
  title: 'Interval with few readings',
  inputs: [
    { symbol: 'v_s', name: 'figure so far', unit: 'as the figure' },
    { symbol: 'v', name: 'figure from one reading alone', unit: 'as the figure', rows: true },
    { symbol: 'v_lo', name: 'its lower end', unit: 'as the figure', rows: true },
    { symbol: 'v_hi', name: 'its upper end', unit: 'as the figure', rows: true },
  ],
  formulas: [
    {
      symbol: 's_lo',
      name: 'figure so far, lower end',
      unit: 'as the figure',
      expression: 'v_s*exp(sum(log(v_lo ./ v))/count(v))',
      source: derived('errors that all readings share'),
    },
    {
      symbol: 's_hi',
      name: 'figure so far, upper end',
      unit: 'as the figure',
      expression: 'v_s*exp(sum(log(v_hi ./ v))/count(v))',
      source: derived('errors that all readings share'),
    },
  ],
})

/** How far the zero-flow pressure has moved, and what that does to the lowest reading. */
export const zeroFlowDrift = chapter({
  title: 'Drift of the zero-flow pressure',
  inputs: [
    { symbol: 'dp_01', name: 'mean zero-flow pressure before', unit: 'Pa' },
    { symbol: 'dp_02', name: 'mean zero-flow pressure after', unit: 'Pa' },
    { symbol: 'n', name: 'air flow exponent', unit: '1' },
    { symbol: 'dp_l', name: 'lowest induced pressure difference read', unit: 'Pa' },
  ],
  formulas: [
    {
      symbol: 'd_0',
      name: 'drift of the zero-flow pressure',
      unit: 'Pa',
      expression: 'dp_02 - dp_01',
      source: practice,
    },
    {
      symbol: 'e_0',
      name: 'error of the flow on the curve at the lowest reading, from half the drift',
      unit: '1',
      expression: 'n*abs(d_0)/(2*dp_l)',
      source: derived('first-order change of the power law'),
    },
  ],
})
