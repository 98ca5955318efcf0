import { chapter, derived, practice } from './chapter.js'

const propagation = derived('JCGM 100:2008, 5.1.2 and 5.2.2')
const figure = 'as the target'

/**
 * One figure for several homes. With each home weighted by what its figure is related to (volume for n, area for q), the products
 * are the air leakage rates, and the mean is their sum over the whole building at one pressure difference.
 */
export const meanOfHomes = chapter({
  title: 'One figure for several homes',
  inputs: [
    { symbol: 'r_h', name: 'figure of a home', unit: figure, rows: true },
    { symbol: 'w_h', name: 'weight of a home', unit: 'm³, m² or 1', rows: true },
  ],
  formulas: [
    {
      symbol: 'q_h',
      name: 'figure times weight; the air leakage rate where the weight is the basis of the figure',
      unit: 'm³/h',
      expression: 'w_h .* r_h',
      source: derived('definition of a weighted mean'),
    },
    {
      symbol: 'g_h',
      name: 'share of a home',
      unit: '1',
      expression: 'q_h/sum(q_h)',
      source: derived('definition of a share'),
    },
    {
      symbol: 'q_b',
      name: 'sum over the homes',
      unit: 'm³/h',
      expression: 'sum(q_h)',
      source: derived('air flows through parallel openings add up at equal pressure difference'),
    },
    {
      symbol: 'w_b',
      name: 'sum of the weights',
      unit: 'm³, m² or 1',
      expression: 'sum(w_h)',
      source: derived('definition of a weighted mean'),
    },
    {
      symbol: 'v_u',
      name: 'figure of the homes together',
      unit: figure,
      expression: 'q_b/w_b',
      source: derived('definition of a weighted mean'),
    },
    {
      symbol: 'r_hi',
      name: 'largest figure of a home',
      unit: figure,
      expression: 'max(r_h)',
      source: practice,
    },
  ],
})

/** Contribution of a cause that several homes share: it does not average out. */
export const sharedByHomes = chapter({
  title: 'One cause that several homes share',
  inputs: [
    { symbol: 'g_h', name: 'share of a home', unit: '1', rows: true },
    { symbol: 'c_h', name: 'contribution to the home, relative, with its sign', unit: '1', rows: true },
  ],
  formulas: [
    {
      symbol: 's_c',
      name: 'contribution to the homes together, relative',
      unit: '1',
      expression: 'sum(g_h .* c_h)',
      source: propagation,
    },
  ],
})

/** Contribution of causes that each home has by itself: they average out in part. */
export const ownOfHomes = chapter({
  title: 'Causes that are each home’s own',
  inputs: [
    { symbol: 'g_h', name: 'share of the home', unit: '1', rows: true },
    { symbol: 'c_h', name: 'contribution to the home, relative', unit: '1', rows: true },
  ],
  formulas: [
    {
      symbol: 'u_o',
      name: 'contribution of all of them together, relative',
      unit: '1',
      expression: 'sqrt(sum((g_h .* c_h) .^ 2))',
      source: propagation,
    },
  ],
})

/** Expected corrections of the homes, combined. */
export const correctionOfHomes = chapter({
  title: 'Expected correction of the homes together',
  inputs: [
    { symbol: 'g_h', name: 'share of a home', unit: '1', rows: true },
    { symbol: 'b_h', name: 'expected correction of ln of the figure of a home', unit: '1', rows: true },
    { symbol: 'nu_h', name: 'effective degrees of freedom of a home', unit: '1', rows: true },
  ],
  formulas: [
    {
      symbol: 'b',
      name: 'expected correction of ln of the figure',
      unit: '1',
      expression: 'sum(g_h .* b_h)',
      source: propagation,
    },
    {
      symbol: 'nu_e',
      name: 'effective degrees of freedom: those of the home with the fewest',
      unit: '1',
      expression: 'min(nu_h)',
      source: derived('not more than any home has, so that the interval is not too narrow'),
    },
  ],
})

/** Both contributions combined, and the interval of the figure. */
export const uncertaintyOfHomes = chapter({
  title: 'Uncertainty of the homes together',
  inputs: [
    { symbol: 'v', name: 'figure of the homes together', unit: figure },
    { symbol: 'u_o', name: 'contribution of causes that are each home’s own, relative', unit: '1' },
    {
      symbol: 's_c',
      name: 'contribution of shared causes, one row for each, relative',
      unit: '1',
      rows: true,
    },
    { symbol: 'b', name: 'expected correction of ln of the figure', unit: '1' },
    { symbol: 'nu_e', name: 'effective degrees of freedom', unit: '1' },
  ],
  formulas: [
    {
      symbol: 'u_c',
      name: 'combined relative standard uncertainty',
      unit: '1',
      expression: 'sqrt(u_o^2 + sum(s_c .^ 2))',
      source: propagation,
    },
    {
      symbol: 'U',
      name: 'expanded relative uncertainty, 95 %',
      unit: '1',
      expression: 'student_t(alpha, nu_e)*u_c',
      source: derived('JCGM 100:2008, 6.2.1 and G.3'),
    },
    {
      symbol: 'v_lo',
      name: 'figure, lower end of 95 %',
      unit: figure,
      expression: 'v*exp(b - U)',
      source: derived('the logarithm of the figure is distributed almost symmetrically'),
    },
    {
      symbol: 'v_hi',
      name: 'figure, upper end of 95 %',
      unit: figure,
      expression: 'v*exp(b + U)',
      source: derived('the logarithm of the figure is distributed almost symmetrically'),
    },
  ],
})

/** How many homes have to be tested. */
export const sampleOfHomes = chapter({
  title: 'Homes to be tested',
  inputs: [
    { symbol: 'N_h', name: 'homes in the building', unit: '1' },
    { symbol: 'N_t', name: 'homes tested', unit: '1' },
    { symbol: 'N_f', name: 'tested homes that do not meet the limit', unit: '1' },
    { symbol: 'z_s', name: 'size of the sample', unit: '1' },
    { symbol: 'z_f', name: 'extra homes for each that does not meet the limit', unit: '1' },
  ],
  formulas: [
    {
      symbol: 'N_n',
      name: 'homes that must be tested',
      unit: '1',
      expression: 'min(N_h, z_s + z_f*N_f)',
      source: practice,
    },
    {
      symbol: 'N_m',
      name: 'homes still to be tested',
      unit: '1',
      expression: 'max(0, N_n - N_t)',
      source: practice,
    },
  ],
})
