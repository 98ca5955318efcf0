import { chapter, derived, memory } from './chapter.js'

const propagation = derived('JCGM 100:2008, 5.1.2 and 5.2.2')

const shares = [
  ['s_r', 'c_r', 'a step between the ranges of the flow device', '1'],
  ['s_g', 'c_g', 'the pressure gauge', '1'],
  ['s_w', 'c_w', 'a shift of the mean pressure around the envelope', '1/Pa'],
  ['s_v', 'c_v', 'the variance of the pressure around the envelope', '1/Pa²'],
  ['s_m', 'c_m', 'the curvature of ln q against ln Δp', '1'],
  ['s_Ti', 'c_Ti', 'the indoor temperature', '1/K'],
  ['s_Te', 'c_Te', 'the outdoor temperature', '1/K'],
  ['s_p', 'c_p', 'the barometric pressure', '1/Pa'],
  ['s_hi', 'c_hi', 'the humidity indoors', '1'],
  ['s_he', 'c_he', 'the humidity outdoors', '1'],
  ['s_n', 'c_n', 'an assumed exponent', '1'],
  ['f_s', 'c_s', 'the air the typed flows are stated for', '1'],
] as const

/** From the runs to the mean over them: what both share adds with its sign, so that opposite effects cancel. */
export const meanSensitivity = chapter({
  title: 'Sensitivities of the mean of the directions',
  inputs: [
    { symbol: 'q_r', name: 'air leakage rate of a run', unit: 'm³/h', rows: true },
    { symbol: 's_0', name: 'sensitivity of a run to its zero-flow pressure', unit: '1/Pa', rows: true },
    ...shares.map(([symbol, , what, unit]) => ({
      symbol,
      name: `sensitivity of a run to ${what}`,
      unit,
      rows: true,
    })),
  ],
  formulas: [
    {
      symbol: 'g',
      name: 'share of a run in the mean',
      unit: '1',
      expression: 'q_r/sum(q_r)',
      source: propagation,
    },
    {
      symbol: 'c_0',
      name: 'sensitivity to the zero-flow pressure of a run',
      unit: '1/Pa',
      expression: 'g .* s_0',
      source: propagation,
    },
    ...shares.map(([of, symbol, what, unit]) => ({
      symbol,
      name: `sensitivity to ${what}`,
      unit,
      expression: `sum(g .* ${of})`,
      source: propagation,
    })),
  ],
})

/**
 * The budget of one figure: each contribution, its share, and what they come to together. Relative throughout.
 *
 * Some causes lie one way only: a variance of pressures or a curvature is never negative. The figure stays as its method
 * gives it; the interval is set about it less what those causes are expected to bring (JCGM 100:2008, 3.2.4 and F.2.4.5).
 */
export const uncertaintyBudget = chapter({
  title: 'Uncertainty budget',
  inputs: [
    { symbol: 'v', name: 'value of the figure', unit: 'as the figure' },
    { symbol: 'c', name: 'relative sensitivity', unit: '1/unit', rows: true },
    { symbol: 'u', name: 'standard uncertainty', unit: 'unit', rows: true },
    { symbol: 'a', name: 'expected size, 0 if it may have either sign', unit: 'unit', rows: true },
    {
      symbol: 'r',
      name: 'fourth power of the scatter found, divided by its degrees of freedom',
      unit: '1',
      rows: true,
    },
  ],
  formulas: [
    {
      symbol: 'd',
      name: 'contribution, relative',
      unit: '1',
      expression: 'abs(c) .* u',
      source: propagation,
    },
    {
      symbol: 'u_c',
      name: 'combined relative standard uncertainty',
      unit: '1',
      expression: 'sqrt(sum(d .^ 2))',
      source: propagation,
    },
    {
      symbol: 'f',
      name: 'share of the variance',
      unit: '1',
      expression: 'd .^ 2/u_c^2',
      source: propagation,
    },
    {
      symbol: 'nu_e',
      name: 'effective degrees of freedom, a million at most',
      unit: '1',
      expression: 'max(1, floor(1/(sum(c .^ 4 .* r)/u_c^4 + 0.000001)))',
      source: derived('Welch–Satterthwaite, JCGM 100:2008, G.4.1, rounded down'),
    },
    {
      symbol: 'k',
      name: 'coverage factor for 95 %',
      unit: '1',
      expression: 'student_t(alpha, nu_e)',
      source: derived('JCGM 100:2008, G.3'),
    },
    {
      symbol: 'u_1',
      name: 'combined standard uncertainty',
      unit: 'as the figure',
      expression: 'v*u_c',
      source: propagation,
    },
    {
      symbol: 'U',
      name: 'expanded relative uncertainty, 95 %',
      unit: '1',
      expression: 'k*u_c',
      source: derived('JCGM 100:2008, 6.2.1'),
    },
    {
      symbol: 'b',
      name: 'expected correction of ln of the figure',
      unit: '1',
      expression: '0 - sum(c .* a)',
      source: derived('JCGM 100:2008, 3.2.4: true minus found'),
    },
    {
      symbol: 'v_lo',
      name: 'value, lower end',
      unit: 'as the figure',
      expression: 'v*exp(b - U)',
      source: derived('the logarithm of the figure is distributed almost symmetrically'),
    },
    {
      symbol: 'v_hi',
      name: 'value, upper end',
      unit: 'as the figure',
      expression: 'v*exp(b + U)',
      source: derived('the logarithm of the figure is distributed almost symmetrically'),
    },
  ],
})

const guarded = memory('JCGM 106:2012, 7.3 and 8.3')

/** How sure it is that the true value meets a limit, and the value that may be accepted for a chosen risk. */
export const conformity = chapter({
  title: 'Probability of meeting the target',
  inputs: [
    { symbol: 'v', name: 'value compared with the limit', unit: 'as the target' },
    { symbol: 'L', name: 'limit', unit: 'as the target' },
    { symbol: 'u_c', name: 'combined relative standard uncertainty', unit: '1' },
    { symbol: 'b', name: 'expected correction of ln of the figure', unit: '1' },
    { symbol: 'nu_e', name: 'effective degrees of freedom', unit: '1' },
    { symbol: 'r_a', name: 'accepted risk', unit: '1' },
    { symbol: 'N_m', name: 'number of limits and directions that must all be met', unit: '1' },
  ],
  formulas: [
    {
      symbol: 'z',
      name: 'distance to the limit in standard uncertainties',
      unit: '1',
      expression: '(log(L/v) - b)/u_c',
      source: guarded,
    },
    {
      symbol: 'P_m',
      name: 'probability that the true value meets the limit',
      unit: '1',
      expression: 'student_share(z, nu_e)',
      source: guarded,
    },
    {
      symbol: 'k_r',
      name: 'guard band in standard uncertainties',
      unit: '1',
      expression: 'student_t(2*r_a/N_m, nu_e)',
      source: guarded,
    },
    {
      symbol: 'L_a',
      name: 'acceptance limit for the accepted risk',
      unit: 'as the target',
      expression: 'L*exp(-b - k_r*u_c)',
      source: guarded,
    },
  ],
})

/** Change between two tests of one house: what both share cancels as far as its sensitivities agree. */
export const uncertaintyOfChange = chapter({
  title: 'Uncertainty of the change between two tests',
  inputs: [
    { symbol: 'v_a', name: 'value of the first test', unit: 'as the figure' },
    { symbol: 'v_b', name: 'value of the second test', unit: 'as the figure' },
    { symbol: 'c_a', name: 'contribution to the first test, with its sign', unit: '1', rows: true },
    { symbol: 'c_b', name: 'contribution to the second test, with its sign', unit: '1', rows: true },
    { symbol: 's', name: '1 if both tests share the cause, else 0', unit: '1', rows: true },
  ],
  formulas: [
    {
      symbol: 'x_c',
      name: 'logarithm of the ratio of the two values',
      unit: '1',
      expression: 'log(v_b/v_a)',
      source: propagation,
    },
    {
      symbol: 'd_c',
      name: 'relative change',
      unit: '1',
      expression: 'v_b/v_a - 1',
      source: propagation,
    },
    {
      symbol: 'u_d',
      name: 'standard uncertainty of the logarithm of the ratio',
      unit: '1',
      expression: 'sqrt(sum(c_a .^ 2 + c_b .^ 2 - 2*s .* c_a .* c_b))',
      source: propagation,
    },
    {
      symbol: 'P_l',
      name: 'probability that the leakage has fallen',
      unit: '1',
      expression: 'normal_share(-(x_c/u_d))',
      source: propagation,
    },
    {
      symbol: 'd_lo',
      name: 'relative change, lower end of 95 %',
      unit: '1',
      expression: 'exp(x_c - normal_quantile(1 - alpha/2)*u_d) - 1',
      source: propagation,
    },
    {
      symbol: 'd_hi',
      name: 'relative change, upper end of 95 %',
      unit: '1',
      expression: 'exp(x_c + normal_quantile(1 - alpha/2)*u_d) - 1',
      source: propagation,
    },
  ],
})
