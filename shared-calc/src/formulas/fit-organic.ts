import { chapter, derived, memory } from './chapter.js'

const structure = memory('weighted line of organic correlation: Delmotte 2013, 2017')
const propagation = derived('first-order propagation, JCGM 100:2008, 5.1; checked against Monte Carlo')

const mean = (symbol: string, of: string, name: string) => ({
  symbol,
  name,
  unit: '1',
  expression: `sum(w .* ${of})/W`,
  source: structure,
})

/** Weighted line of organic correlation through readings in logarithms whose pressures and flows are both uncertain. */
export const organicLine = chapter({
  title: 'Weighted line of organic correlation',
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
  ],
  formulas: [
    {
      symbol: 'w',
      name: 'weight of a reading',
      unit: '1',
      expression: '1 ./ (u_x .* u_y)',
      source: structure,
    },
    { symbol: 'W', name: 'sum of the weights', unit: '1', expression: 'sum(w)', source: structure },
    mean('xbar', 'x', 'weighted mean of x'),
    mean('ybar', 'y', 'weighted mean of y'),
    {
      symbol: 'Q_x',
      name: 'weighted sum of squares of x',
      unit: '1',
      expression: 'sum(w .* (x - xbar) .^ 2)',
      source: structure,
    },
    {
      symbol: 'Q_y',
      name: 'weighted sum of squares of y',
      unit: '1',
      expression: 'sum(w .* (y - ybar) .^ 2)',
      source: structure,
    },
    { symbol: 'n', name: 'air flow exponent', unit: '1', expression: 'sqrt(Q_y/Q_x)', source: structure },
    {
      symbol: 'lnC',
      name: 'logarithm of the air flow coefficient',
      unit: '1',
      expression: 'ybar - n*xbar',
      source: structure,
    },
    {
      symbol: 'd_ny',
      name: 'change of the exponent with y',
      unit: '1',
      expression: 'w .* (y - ybar)/(n*Q_x)',
      source: propagation,
    },
    {
      symbol: 'd_nx',
      name: 'change of the exponent with x',
      unit: '1',
      expression: '(0 - n)*w .* (x - xbar)/Q_x',
      source: propagation,
    },
    {
      symbol: 'd_Cy',
      name: 'change of ln C with y',
      unit: '1',
      expression: 'w/W - xbar*d_ny',
      source: propagation,
    },
    {
      symbol: 'd_Cx',
      name: 'change of ln C with x',
      unit: '1',
      expression: '(0 - n)*w/W - xbar*d_nx',
      source: propagation,
    },
    {
      symbol: 'u_n',
      name: 'standard uncertainty of the exponent',
      unit: '1',
      expression: 'sqrt(sum((d_ny .* u_y) .^ 2 + (d_nx .* u_x) .^ 2))',
      source: propagation,
    },
    {
      symbol: 'u_lnC',
      name: 'standard uncertainty of ln C',
      unit: '1',
      expression: 'sqrt(sum((d_Cy .* u_y) .^ 2 + (d_Cx .* u_x) .^ 2))',
      source: propagation,
    },
    {
      symbol: 'u_nC',
      name: 'covariance of exponent and ln C',
      unit: '1',
      expression: 'sum(d_ny .* d_Cy .* u_y .^ 2 + d_nx .* d_Cx .* u_x .^ 2)',
      source: propagation,
    },
  ],
})
