import type { Formula } from '../engine/index.js'
import { derived } from './chapter.js'

const propagation = derived('first-order propagation, JCGM 100:2008, 5.1.2; checked against Monte Carlo')
const quadratic = derived('expectation and variance of a quadratic form in the residuals, M = I − H')

const scatteredPressures = derived(
  'second order in the scatter of the pressures: a line through scattered x is too flat, and the mean of ln(p + ε) below ln p',
)

/**
 * Scatter of the readings round a fitted line: as expected of the instruments, and what is found beyond it.
 *
 * What scatters beyond the instruments is wind: gusts move the pressure by as many pascals at 10 Pa as at 60, so that the
 * logarithms of the low readings scatter most, and those readings count most for a figure below them. One standard
 * deviation for all logarithms would make ELA at 4 Pa look a third surer than it is. So the excess is taken as one
 * variance of the pressure, v_g: residuals of a fit with leverages h have E(Σ w·e²) = Σ w·(1 − h)·σ², σ² = u_y² +
 * (n·u_x)² + v_g·(n/Δp)². A few low readings carry most of it: its degrees of freedom are 2·E²/Var of the same sum, fewer
 * than N − 2.
 */
export const scatterOfLine: readonly Formula[] = [
  {
    symbol: 'd_x',
    name: 'distance of x from its mean',
    unit: '1',
    expression: 'x - xbar',
    source: quadratic,
  },
  {
    symbol: 'h_x',
    name: 'leverage of a reading',
    unit: '1',
    expression: 'w .* (1/N + d_x .^ 2/((N - 1)*S_xx))',
    source: quadratic,
  },
  {
    symbol: 'SSE_0',
    name: 'expected sum of the squared residuals',
    unit: '1',
    expression: 'sum(w .* (1 - h_x) .* ((n*u_x) .^ 2 + u_y .^ 2))',
    source: quadratic,
  },
  {
    symbol: 't_g',
    name: 'effect of a variance of the pressure on a squared residual, without leverage',
    unit: '1/Pa²',
    expression: 'w .* (n ./ dp) .^ 2',
    source: quadratic,
  },
  {
    symbol: 'E_g',
    name: 'effect of a variance of the pressure on the sum of the squared residuals',
    unit: '1/Pa²',
    expression: 'sum(t_g .* (1 - h_x))',
    source: quadratic,
  },
  {
    symbol: 'v_g',
    name: 'variance of the pressure of a reading beyond the expected one',
    unit: 'Pa²',
    expression: 'max(0, (SSE - SSE_0)/E_g)',
    source: quadratic,
  },
  {
    symbol: 'V_g',
    name: 'half the variance of that sum, for a variance of 1 Pa²',
    unit: '1/Pa⁴',
    expression:
      'sum(t_g .^ 2 .* (1 - 2*h_x)) + (sum(w .* t_g)/N)^2 + 2*sum(w .* t_g .* d_x)^2/(N*(N - 1)*S_xx) + (sum(w .* t_g .* d_x .^ 2)/((N - 1)*S_xx))^2',
    source: quadratic,
  },
  {
    symbol: 'nu_s',
    name: 'degrees of freedom of the scatter found',
    unit: '1',
    expression: 'max(1, E_g^2/V_g)',
    source: derived('Satterthwaite, as JCGM 100:2008, G.4.1'),
  },
  {
    symbol: 'u_s',
    name: 'effect on the leakage rate of scatter beyond the expected',
    unit: '1',
    expression: 'sqrt(v_g*sum((c_x ./ dp) .^ 2))',
    source: propagation,
  },
  {
    symbol: 'f_xx',
    name: 'second derivative of ln of the leakage rate with ln of the pressure difference',
    unit: '1',
    expression:
      'w .* ((L_r - xbar)*(4*n*w .* d_x .^ 2/((N - 1)*S_xx) - 2*n*(1 - w/N)) + 2*n*w .* d_x/N)/((N - 1)*S_xx)',
    source: scatteredPressures,
  },
  {
    symbol: 'b_r',
    name: 'mean effect of the scatter of the pressures on ln of the leakage rate',
    unit: '1',
    expression: '0.5*sum((f_xx - c_x) .* (u_x .^ 2 + v_g ./ dp .^ 2))',
    source: scatteredPressures,
  },
  {
    symbol: 'u_r',
    name: 'scatter of the readings used: the expected, and any found beyond it',
    unit: '1',
    expression: 'sqrt(u_b^2 + u_s^2)',
    source: derived('only the excess over the expected scatter is added, so no scatter is counted twice'),
  },
  {
    symbol: 'r_r',
    name: 'its fourth power divided by the degrees of freedom, for the effective degrees of freedom',
    unit: '1',
    expression: 'u_s^4/nu_s',
    source: derived('Welch–Satterthwaite, JCGM 100:2008, G.4.1; only the found scatter is uncertain'),
  },
]
