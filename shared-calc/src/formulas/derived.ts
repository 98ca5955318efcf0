import { chapter, derived, memory, read } from './chapter.js'

const rates = [
  {
    symbol: 'V',
    name: 'internal volume',
    unit: 'm³',
    rate: 'n_pr',
    term: 'air change rate',
    rateUnit: '1/h',
  },
  {
    symbol: 'A_E',
    name: 'envelope area',
    unit: 'm²',
    rate: 'q_E',
    term: 'specific leakage rate (envelope)',
    rateUnit: 'm³/(h·m²)',
  },
  {
    symbol: 'A_F',
    name: 'floor area',
    unit: 'm²',
    rate: 'q_F',
    term: 'specific leakage rate (floor)',
    rateUnit: 'm³/(h·m²)',
  },
  {
    symbol: 'A_T',
    name: 'loss area without the lowest floor',
    unit: 'm²',
    rate: 'q_T',
    term: 'specific leakage rate (loss area)',
    rateUnit: 'm³/(h·m²)',
  },
] as const

const definitionOf = (symbol: (typeof rates)[number]['symbol']) =>
  symbol === 'A_T' ? read('French FAQ RE2020 no. 134') : read('ISO 9972:2015, definitions')

const ends = [
  { flow: 'q_pr', suffix: '', word: '' },
  { flow: 'q_lo', suffix: '_lo', word: ', lower end' },
  { flow: 'q_hi', suffix: '_hi', word: ', upper end' },
] as const

/** The leakage rate related to volume, envelope and floor; what lacks its basis is left out. */
export const derivedRates = chapter({
  title: 'Derived quantities',
  inputs: [
    { symbol: 'q_pr', name: 'air leakage rate', unit: 'm³/h' },
    { symbol: 'q_lo', name: 'air leakage rate, lower end', unit: 'm³/h' },
    { symbol: 'q_hi', name: 'air leakage rate, upper end', unit: 'm³/h' },
    ...rates.map(({ symbol, name, unit }) => ({ symbol, name, unit })),
  ],
  formulas: rates.flatMap(({ symbol, rate, term, rateUnit }) =>
    ends.map(({ flow, suffix, word }) => ({
      symbol: `${rate}${suffix}`,
      name: `${term}${word}`,
      unit: rateUnit,
      expression: `${flow}/${symbol}`,
      source: definitionOf(symbol),
    })),
  ),
})

/**
 * The leakage area of a sharp-edged hole related to the envelope, whatever discharge coefficient the method's own leakage
 * area has: limits on it are set with that of CAN/CGSB-149.10.
 */
export const normalisedLeakageArea = chapter({
  title: 'Normalised leakage area',
  inputs: [
    { symbol: 'q_pr', name: 'air leakage rate', unit: 'm³/h' },
    { symbol: 'dp_r', name: 'reference pressure difference', unit: 'Pa' },
    { symbol: 'A_E', name: 'envelope area', unit: 'm²' },
  ],
  formulas: [
    {
      symbol: 'A_N',
      name: 'normalised leakage area',
      unit: 'cm²/m²',
      expression: 'u_A*q_pr/(s_h*C_g*sqrt(2*dp_r/rho_0)*A_E)',
      source: derived('orifice law q = C·A·√(2Δp/ρ)'),
    },
  ],
})

const mean = memory('ISO 9972:2015, 6.3; directions are averaged, never pooled')

/** The reported values: arithmetic means over the directions run. */
export const meanOfDirections = chapter({
  title: 'Mean of the directions',
  inputs: [
    { symbol: 'q_r', name: 'air leakage rate of a run', unit: 'm³/h', rows: true },
    { symbol: 'A_r', name: 'effective leakage area of a run', unit: 'cm²', rows: true },
  ],
  formulas: [
    { symbol: 'q_pr', name: 'air leakage rate', unit: 'm³/h', expression: 'mean(q_r)', source: mean },
    { symbol: 'A_L', name: 'effective leakage area', unit: 'cm²', expression: 'mean(A_r)', source: mean },
    {
      symbol: 'd_q',
      name: 'difference of the directions, share of the mean',
      unit: '1',
      expression: '(max(q_r) - min(q_r))/q_pr',
      source: { text: 'common practice, no source', seen: 'common practice' },
    },
  ],
})
