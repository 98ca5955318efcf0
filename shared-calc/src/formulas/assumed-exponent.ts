import { chapter, derived, memory } from './chapter.js'

/** The power law through the mean of readings too few for a fit, with the exponent assumed. */
export const assumedExponentCurve = chapter({
  title: 'Running estimate with an assumed exponent',
  inputs: [
    { symbol: 'xbar', name: 'mean of x', unit: '1' },
    { symbol: 'ybar', name: 'mean of y', unit: '1' },
    { symbol: 'n_a', name: 'assumed air flow exponent', unit: '1' },
  ],
  formulas: [
    {
      symbol: 'n',
      name: 'air flow exponent',
      unit: '1',
      expression: 'n_a',
      source: memory('ASTM E1827, one-point test: n = 0.65 assumed'),
    },
    {
      symbol: 'C_env',
      name: 'air flow coefficient',
      unit: 'm³/(h·Paⁿ)',
      expression: 'exp(ybar - n_a*xbar)',
      source: derived('the power law through the mean of the readings, in logarithms'),
    },
  ],
})
