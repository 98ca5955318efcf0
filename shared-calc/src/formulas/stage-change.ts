import { chapter, derived } from './chapter.js'

const scatter = derived('half-width of a mean of directions fitted independently; fit scatter only')

/**
 * Half-width of the mean over the directions that the scatter of the fits allows, from each direction's 95 % interval.
 */
export const spreadOfMean = chapter({
  title: 'Spread of the mean of the directions',
  inputs: [
    { symbol: 'lo_r', name: 'lower end of a direction', unit: 'as the quantity', rows: true },
    { symbol: 'hi_r', name: 'upper end of a direction', unit: 'as the quantity', rows: true },
  ],
  formulas: [
    {
      symbol: 'h',
      name: 'half-width of the 95 % interval of the mean',
      unit: 'as the quantity',
      expression: 'sqrt(sum(((hi_r - lo_r)/2).^2))/count(lo_r)',
      source: scatter,
    },
  ],
})

/** What changed between two tests of one house. */
export const changeBetweenTests = chapter({
  title: 'Change between two tests',
  inputs: [
    { symbol: 'v_1', name: 'value of the earlier test', unit: 'as the quantity' },
    { symbol: 'v_2', name: 'value of the later test', unit: 'as the quantity' },
    { symbol: 'h_1', name: 'half-width of the earlier test', unit: 'as the quantity' },
    { symbol: 'h_2', name: 'half-width of the later test', unit: 'as the quantity' },
  ],
  formulas: [
    {
      symbol: 'd',
      name: 'change',
      unit: 'as the quantity',
      expression: 'v_2 - v_1',
      source: derived('later minus earlier'),
    },
    {
      symbol: 's',
      name: 'change, share of the earlier value',
      unit: '1',
      expression: 'd/v_1',
      source: derived('later minus earlier, divided by the earlier'),
    },
    {
      symbol: 'd_lo',
      name: 'change, lower end',
      unit: 'as the quantity',
      expression: 'd - sqrt(h_1^2 + h_2^2)',
      source: derived('two independent half-widths; fit scatter only'),
    },
    {
      symbol: 'd_hi',
      name: 'change, upper end',
      unit: 'as the quantity',
      expression: 'd + sqrt(h_1^2 + h_2^2)',
      source: derived('two independent half-widths; fit scatter only'),
    },
  ],
})

/** Where the curves of two tests cross. Their exponents must differ. */
export const crossing = chapter({
  title: 'Where two curves cross',
  inputs: [
    { symbol: 'C_1', name: 'air leakage coefficient of the earlier test', unit: 'm³/(h·Paⁿ)' },
    { symbol: 'C_2', name: 'air leakage coefficient of the later test', unit: 'm³/(h·Paⁿ)' },
    { symbol: 'n_1', name: 'air flow exponent of the earlier test', unit: '1' },
    { symbol: 'n_2', name: 'air flow exponent of the later test', unit: '1' },
  ],
  formulas: [
    {
      symbol: 'dp_x',
      name: 'pressure difference at which both leak equally',
      unit: 'Pa',
      expression: 'exp(log(C_1/C_2)/(n_2 - n_1))',
      source: derived('C₁·Δpⁿ¹ = C₂·Δpⁿ²'),
    },
  ],
})
