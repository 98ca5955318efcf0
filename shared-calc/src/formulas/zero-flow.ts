import { chapter, memory } from './chapter.js'

/** Zero-flow pressure of one period, before or after the readings. */
export const zeroFlowPeriod = chapter({
  title: 'Zero-flow pressure',
  inputs: [{ symbol: 'dp_z', name: 'zero-flow pressure difference', unit: 'Pa', rows: true }],
  formulas: [
    {
      symbol: 'dp_m0',
      name: 'mean zero-flow pressure of the period',
      unit: 'Pa',
      expression: 'mean(dp_z)',
      source: memory('ISO 9972:2015, 5.3.3'),
    },
    {
      symbol: 'dp_plus',
      name: 'mean of the positive zero-flow pressures',
      unit: 'Pa',
      expression: 'positive_mean(dp_z)',
      source: memory('ISO 9972:2015, 5.3.3'),
    },
    {
      symbol: 'dp_minus',
      name: 'mean of the negative zero-flow pressures',
      unit: 'Pa',
      expression: 'negative_mean(dp_z)',
      source: memory('ISO 9972:2015, 5.3.3'),
    },
  ],
})
