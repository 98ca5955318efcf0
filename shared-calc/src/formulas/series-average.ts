import { chapter, memory } from './chapter.js'

const effective = memory(
  'A. Zięba, Effective number of observations and unbiased estimators of variance for autocorrelated data, Metrology and Measurement Systems 17 (2010) 3–16',
)

/**
 * Standard uncertainty of the average of samples that follow each other too closely to be independent.
 * Lags run to the first at which the autocorrelation is no longer positive. GUM 4.2.7 asks for such a method.
 */
export const averageOfSeries = chapter({
  title: 'Average of a raw series',
  inputs: [
    { symbol: 'k', name: 'lag, in samples', unit: '1', rows: true },
    { symbol: 'r_k', name: 'autocorrelation at the lag', unit: '1', rows: true },
    { symbol: 'N_s', name: 'number of samples', unit: '1' },
    { symbol: 's_s', name: 'standard deviation of the samples', unit: 'Pa' },
  ],
  formulas: [
    {
      symbol: 'n_eff',
      name: 'effective number of samples',
      unit: '1',
      expression: 'N_s/(1 + 2*sum((1 - k/N_s) .* r_k))',
      source: effective,
    },
    {
      symbol: 'u_s',
      name: 'standard uncertainty of the average',
      unit: 'Pa',
      expression: 's_s*sqrt((N_s - 1)/(N_s*(n_eff - 1)))',
      source: effective,
    },
  ],
})
