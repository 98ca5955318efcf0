import { chapter, derived, practice, read } from './chapter.js'

const annex = read('ISO 9972:2015 Annex C; Roulet 2008, eq. 7.13–7.21')

/** By how much one further reading of the same scatter would narrow the result. */
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

/** Error that assuming the exponent causes at a reference pressure away from the readings. */
export const assumedExponentError = chapter({
  title: 'Error of an assumed exponent',
  inputs: [
    { symbol: 'dp_r', name: 'reference pressure difference', unit: 'Pa' },
    { symbol: 'xbar', name: 'mean of x', unit: '1' },
    { symbol: 'q_pr', name: 'air leakage rate', unit: 'm³/h' },
    { symbol: 'n_a', name: 'assumed air flow exponent', unit: '1' },
    { symbol: 'n_lo', name: 'lowest expected exponent', unit: '1' },
    { symbol: 'n_hi', name: 'highest expected exponent', unit: '1' },
  ],
  formulas: [
    {
      symbol: 'e_lo',
      name: 'relative error if the exponent is the lowest',
      unit: '1',
      expression: 'exp((n_lo - n_a)*(log(dp_r) - xbar)) - 1',
      source: derived('power law through the same reading with another exponent'),
    },
    {
      symbol: 'e_hi',
      name: 'relative error if the exponent is the highest',
      unit: '1',
      expression: 'exp((n_hi - n_a)*(log(dp_r) - xbar)) - 1',
      source: derived('power law through the same reading with another exponent'),
    },
    {
      symbol: 'q_lo',
      name: 'air leakage rate, lower end',
      unit: 'm³/h',
      expression: 'q_pr*(1 + min(e_lo, e_hi))',
      source: derived('the expected exponents'),
    },
    {
      symbol: 'q_hi',
      name: 'air leakage rate, upper end',
      unit: 'm³/h',
      expression: 'q_pr*(1 + max(e_lo, e_hi))',
      source: derived('the expected exponents'),
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
