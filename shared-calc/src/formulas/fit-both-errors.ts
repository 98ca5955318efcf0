import { chapter, memory } from './chapter.js'

const york = memory('York et al. 2004, Am. J. Phys. 72, p. 367, eq. 13 (errors of x and y independent)')

/**
 * One round of York's weighted least squares with errors in both variables. Given the slope of the previous iteration it
 * returns the next; at the solution the two are equal, and `n_d` shows it.
 */
export const bothErrorsLine = chapter({
  title: 'Weighted least squares, errors in both variables',
  inputs: [
    { symbol: 'x', name: 'logarithm of the pressure difference', unit: '1', rows: true },
    { symbol: 'y', name: 'logarithm of the envelope flow', unit: '1', rows: true },
    {
      symbol: 'u_x',
      name: 'relative standard uncertainty of the pressure difference',
      unit: '1',
      rows: true,
    },
    { symbol: 'u_y', name: 'relative standard uncertainty of the flow', unit: '1', rows: true },
    { symbol: 'n_b', name: 'slope of the previous iteration', unit: '1' },
  ],
  formulas: [
    {
      symbol: 'w',
      name: 'weight of a reading',
      unit: '1',
      expression: '1 ./ (u_y .^ 2 + n_b^2*u_x .^ 2)',
      source: york,
    },
    { symbol: 'W', name: 'sum of the weights', unit: '1', expression: 'sum(w)', source: york },
    { symbol: 'xbar', name: 'weighted mean of x', unit: '1', expression: 'sum(w .* x)/W', source: york },
    { symbol: 'ybar', name: 'weighted mean of y', unit: '1', expression: 'sum(w .* y)/W', source: york },
    {
      symbol: 'b_x',
      name: 'adjusted x minus its mean',
      unit: '1',
      expression: 'w .* ((x - xbar) .* u_y .^ 2 + n_b*(y - ybar) .* u_x .^ 2)',
      source: york,
    },
    {
      symbol: 'n',
      name: 'air flow exponent',
      unit: '1',
      expression: 'sum(w .* b_x .* (y - ybar))/sum(w .* b_x .* (x - xbar))',
      source: york,
    },
    {
      symbol: 'n_d',
      name: 'change in this iteration, 0 at the solution',
      unit: '1',
      expression: 'n - n_b',
      source: york,
    },
    {
      symbol: 'lnC',
      name: 'logarithm of the air flow coefficient',
      unit: '1',
      expression: 'ybar - n*xbar',
      source: york,
    },
    {
      symbol: 'x_a',
      name: 'weighted mean of the adjusted x',
      unit: '1',
      expression: 'xbar + sum(w .* b_x)/W',
      source: york,
    },
    {
      symbol: 'u_n',
      name: 'standard uncertainty of the exponent',
      unit: '1',
      expression: '1/sqrt(sum(w .* (b_x - (x_a - xbar)) .^ 2))',
      source: york,
    },
    {
      symbol: 'u_lnC',
      name: 'standard uncertainty of ln C',
      unit: '1',
      expression: 'sqrt(1/W + x_a^2*u_n^2)',
      source: york,
    },
    {
      symbol: 'u_nC',
      name: 'covariance of exponent and ln C',
      unit: '1',
      expression: '0 - x_a*u_n^2',
      source: york,
    },
    {
      symbol: 'S_r',
      name: 'weighted sum of squared residuals',
      unit: '1',
      expression: 'sum(w .* (y - lnC - n*x) .^ 2)',
      source: york,
    },
    {
      symbol: 'chi_r',
      name: 'weighted sum of squares per degree of freedom, about 1 if the uncertainties match the scatter',
      unit: '1',
      expression: 'S_r/(count(x) - 2)',
      source: york,
    },
  ],
})
