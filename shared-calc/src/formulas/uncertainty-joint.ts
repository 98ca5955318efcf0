import { chapter, derived } from './chapter.js'

/** How far two figures go wrong together: through the causes that both have. */
export const correlationOfFigures = chapter({
  title: 'Correlation of two figures',
  inputs: [
    { symbol: 'd_1', name: 'contribution to the first figure, with its sign', unit: '1', rows: true },
    { symbol: 'd_2', name: 'contribution of the same cause to the second', unit: '1', rows: true },
    { symbol: 'u_1', name: 'combined relative standard uncertainty of the first', unit: '1' },
    { symbol: 'u_2', name: 'combined relative standard uncertainty of the second', unit: '1' },
  ],
  formulas: [
    {
      symbol: 'rho',
      name: 'correlation coefficient, within −1 and 1 whatever is rounded',
      unit: '1',
      expression: 'max(-1, min(1, sum(d_1 .* d_2)/(u_1*u_2)))',
      source: derived('JCGM 100:2008, 5.2.2 and F.1.2.3'),
    },
  ],
})

const plackett = derived(
  'bivariate normal probability: its derivative with the correlation is the density (Plackett 1954), r = sin of an angle',
)

/**
 * Probability that two figures both meet their limits, from the probability of each and their correlation. The normal
 * scores of both are taken as jointly normal: Φ₂(h, k; ρ) = Φ(h)·Φ(k) + 1/(2π)·∫₀^arcsin ρ exp(−(h² − 2hk·sin θ + k²)/(2·cos² θ)) dθ,
 * summed at given places between 0 and 1 (Gauss and Legendre).
 */
export const bothMet = chapter({
  title: 'Both met',
  inputs: [
    { symbol: 'P_1', name: 'probability that the first is met', unit: '1' },
    { symbol: 'P_2', name: 'probability that the second is met', unit: '1' },
    { symbol: 'rho', name: 'correlation coefficient', unit: '1' },
    { symbol: 't', name: 'place of the sum, as a share of the angle', unit: '1', rows: true },
    { symbol: 'w', name: 'weight of the place', unit: '1', rows: true },
  ],
  formulas: [
    {
      symbol: 'h',
      name: 'normal score of the first, finite for every probability',
      unit: '1',
      expression: 'normal_quantile(min(max(P_1, 1e-12), 1 - 1e-12))',
      source: plackett,
    },
    {
      symbol: 'k',
      name: 'normal score of the second',
      unit: '1',
      expression: 'normal_quantile(min(max(P_2, 1e-12), 1 - 1e-12))',
      source: plackett,
    },
    { symbol: 'a', name: 'angle of the correlation', unit: '1', expression: 'asin(rho)', source: plackett },
    { symbol: 's', name: 'correlation at the place', unit: '1', expression: 'sin(a*t)', source: plackett },
    {
      symbol: 'P_b',
      name: 'probability that both are met',
      unit: '1',
      expression: 'max(0, P_1*P_2 + a/(2*pi)*sum(w .* exp((h*k*s - (h^2 + k^2)/2) ./ (1 - s .^ 2))))',
      source: plackett,
    },
  ],
})

/**
 * One limit more: the probability of all so far, times that of the next where the one it goes most closely with is met.
 * Exact where the next depends on the others through that one alone, as a limit per area on that per volume of one run.
 */
export const allMet = chapter({
  title: 'All met',
  inputs: [
    { symbol: 'P_s', name: 'probability that all so far are met', unit: '1' },
    { symbol: 'P_b', name: 'probability that the next is met with the closest of them', unit: '1' },
    { symbol: 'P_j', name: 'probability that the closest of them is met', unit: '1' },
  ],
  formulas: [
    {
      symbol: 'P_a',
      name: 'probability that all are met',
      unit: '1',
      expression: 'P_s*P_b/max(P_j, 1e-12)',
      source: derived('chain of conditional probabilities'),
    },
  ],
})
