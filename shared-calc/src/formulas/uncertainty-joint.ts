import { chapter, derived } from './chapter.js'

/** How strongly the errors of two figures are correlated, through the causes they share. */
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
      name: 'correlation coefficient, at most 1 minus a billionth',
      unit: '1',
      expression: 'max(-1 + 1e-9, min(1 - 1e-9, sum(d_1 .* d_2)/(u_1*u_2)))',
      source: derived('JCGM 100:2008, 5.2.2 and F.1.2.3'),
    },
  ],
})

const plackett = derived(
  'bivariate normal probability: its derivative with the correlation is the density (Plackett 1954), r = tanh v',
)

/**
 * Probability that two figures both meet their limits, from the probability of each and their correlation. The normal
 * scores of both are taken as jointly normal: Φ₂(h, k; ρ) = Φ(h)·Φ(k) + 1/(2π)·∫₀^ρ exp(−(h² − 2hk·r + k²)/(2(1 − r²)))/√(1 − r²) dr.
 * With r = tanh v the integrand stays finite; it is integrated by Gauss–Legendre quadrature at given nodes.
 */
export const bothMet = chapter({
  title: 'Both met',
  inputs: [
    { symbol: 'P_1', name: 'probability that the first is met', unit: '1' },
    { symbol: 'P_2', name: 'probability that the second is met', unit: '1' },
    { symbol: 'rho', name: 'correlation coefficient', unit: '1' },
    { symbol: 't', name: 'node of the quadrature, as a share of the interval', unit: '1', rows: true },
    { symbol: 'w', name: 'weight of the node', unit: '1', rows: true },
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
    {
      symbol: 'a',
      name: 'upper limit of the integral: artanh of the correlation',
      unit: '1',
      expression: '0.5*log((1 + rho)/(1 - rho))',
      source: plackett,
    },
    {
      symbol: 'r',
      name: 'correlation at the node',
      unit: '1',
      expression: '1 - 2 ./ (exp(2*a*t) + 1)',
      source: plackett,
    },
    {
      symbol: 'P_b',
      name: 'probability that both are met',
      unit: '1',
      expression:
        'max(0, P_1*P_2 + a/(2*pi)*sum(w .* sqrt(1 - r .^ 2) .* exp((h*k*r - (h^2 + k^2)/2) ./ (1 - r .^ 2))))',
      source: plackett,
    },
  ],
})

/**
 * One more limit: the probability of all so far, times that of the next given that the limit most closely correlated
 * with it is met. Exact where the next depends on the others only through that one, as a limit per area on that per
 * volume of one run.
 */
export const allMet = chapter({
  title: 'All met',
  inputs: [
    { symbol: 'P_s', name: 'probability that all so far are met', unit: '1' },
    { symbol: 'P_b', name: 'probability that the next and the closest of them are both met', unit: '1' },
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
