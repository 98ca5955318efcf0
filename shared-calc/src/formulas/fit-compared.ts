import { chapter, derived } from './chapter.js'

const compare = derived('two curves through the same readings, both as measured')

/** Another fit compared with the official one at a reference pressure, both before the correction to reference air. */
export const fitCompared = chapter({
  title: 'Two fits compared',
  inputs: [
    { symbol: 'dp_r', name: 'reference pressure difference', unit: 'Pa' },
    { symbol: 'n', name: 'air flow exponent, official fit', unit: '1' },
    { symbol: 'lnC', name: 'logarithm of the air flow coefficient, official fit', unit: '1' },
    { symbol: 'n_o', name: 'air flow exponent, other fit', unit: '1' },
    { symbol: 'lnC_o', name: 'logarithm of the air flow coefficient, other fit', unit: '1' },
  ],
  formulas: [
    {
      symbol: 'C_b',
      name: 'air flow coefficient, other fit',
      unit: 'm³/(h·Paⁿ)',
      expression: 'exp(lnC_o)',
      source: compare,
    },
    {
      symbol: 'q_n',
      name: 'flow on the other curve',
      unit: 'm³/h',
      expression: 'exp(lnC_o + n_o*log(dp_r))',
      source: compare,
    },
    {
      symbol: 'd_o',
      name: 'relative difference to the official curve',
      unit: '1',
      expression: 'exp(lnC_o - lnC + (n_o - n)*log(dp_r)) - 1',
      source: compare,
    },
  ],
})
