import { chapter, derived, memory } from './chapter.js'

const covariance = memory(
  'analysis of covariance, two parallel lines: Draper and Smith, Applied Regression Analysis, 1998, ch. 14',
)
const propagation = derived('first-order propagation, JCGM 100:2008, 5.1.2')
const fromLogarithm = derived('from its logarithm')
const both = derived('the larger of two limits: scatter found, and scatter expected')

/**
 * Two parallel lines through the logarithms, one through the readings before a place in the list and one through those
 * from it on. How far apart they lie is how much the leakage changed there; the part of the step that the pressures explain
 * as well says nothing, so that a list sorted by pressure tells less.
 */
export const leakageStep = chapter({
  title: 'Change of the leakage between two readings',
  inputs: [
    { symbol: 'x', name: 'logarithm of the pressure difference', unit: '1', rows: true },
    { symbol: 'y', name: 'logarithm of the envelope flow', unit: '1', rows: true },
    { symbol: 'dp', name: 'induced pressure difference', unit: 'Pa', rows: true },
    { symbol: 'z', name: 'before the change (0) or after it (1)', unit: '1', rows: true },
    { symbol: 'p_f', name: 'chance that a good run is said to have such a change', unit: '1' },
    { symbol: 'u_f', name: 'expected scatter of a flow, relative', unit: '1' },
    { symbol: 'u_p', name: 'expected scatter of a pressure difference', unit: 'Pa' },
    { symbol: 'k_u', name: 'least multiple of the expected scatter', unit: '1' },
  ],
  formulas: [
    { symbol: 'N', name: 'number of readings', unit: '1', expression: 'count(x)', source: covariance },
    {
      symbol: 'd_x',
      name: 'distance of x from its mean',
      unit: '1',
      expression: 'x - mean(x)',
      source: covariance,
    },
    {
      symbol: 'd_z',
      name: 'distance of z from its mean, less what x explains of it',
      unit: '1',
      expression: 'z - mean(z) - (sum(d_x .* z)/sum(d_x .^ 2))*d_x',
      source: covariance,
    },
    {
      symbol: 'Q_z',
      name: 'sum of its squares',
      unit: '1',
      expression: 'sum(d_z .^ 2)',
      source: covariance,
    },
    {
      symbol: 's_z',
      name: 'change of the logarithm of the flow',
      unit: '1',
      expression: 'sum(d_z .* y)/Q_z',
      source: covariance,
    },
    {
      symbol: 'n_z',
      name: 'air flow exponent of both lines',
      unit: '1',
      expression: 'sum(d_x .* (y - s_z*z))/sum(d_x .^ 2)',
      source: covariance,
    },
    {
      symbol: 'e_z',
      name: 'residual of the two lines, in logarithms',
      unit: '1',
      expression: 'y - mean(y) - s_z*(z - mean(z)) - n_z*d_x',
      source: covariance,
    },
    {
      symbol: 'SSE_z',
      name: 'sum of its squares',
      unit: '1',
      expression: 'sum(e_z .^ 2)',
      source: covariance,
    },
    {
      symbol: 'S_z',
      name: 'standard error of the change, from the scatter found',
      unit: '1',
      expression: 'sqrt(SSE_z/((N - 3)*Q_z))',
      source: covariance,
    },
    {
      symbol: 'u_z',
      name: 'standard uncertainty of the change, from the scatter expected',
      unit: '1',
      expression: 'sqrt(sum((d_z/Q_z) .^ 2 .* (u_f^2 + (n_z*u_p ./ dp) .^ 2)))',
      source: propagation,
    },
    {
      symbol: 't_z',
      name: 'Student t, the chance shared by the N − 3 places looked at',
      unit: '1',
      expression: 'student_t(p_f/(N - 3), N - 3)',
      source: memory("Bonferroni's inequality"),
    },
    {
      symbol: 'l_z',
      name: 'least change that stands out, of the logarithm',
      unit: '1',
      expression: 'max(t_z*S_z, k_u*u_z)',
      source: both,
    },
    {
      symbol: 'f_z',
      name: 'change of the leakage, as a share',
      unit: '1',
      expression: 'exp(s_z) - 1',
      source: fromLogarithm,
    },
    {
      symbol: 'f_l',
      name: 'least change that stands out on that side, as a share',
      unit: '1',
      expression: 'exp(l_z*s_z/abs(s_z)) - 1',
      source: fromLogarithm,
    },
  ],
})
