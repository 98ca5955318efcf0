import type { Formula } from '../engine/index.js'
import { chapter, definition, derived, memory } from './chapter.js'
import { curvePoints, readingInputs } from './leakage-curve.js'

const law = definition('power law of the leakage curve')

const flowOnCurve: readonly Formula[] = [
  { symbol: 'q_fit', name: 'flow on the curve', unit: 'm³/h', expression: 'C_env*dp .^ n', source: law },
  {
    symbol: 'SSE',
    name: 'sum of the squared residuals, in logarithms',
    unit: '1',
    expression: 'sum((y - log(q_fit)) .^ 2)',
    source: derived('scatter of the repeated readings'),
  },
]

const meanOfStation: readonly Formula[] = [
  {
    symbol: 'dp_1',
    name: 'mean induced pressure difference',
    unit: 'Pa',
    expression: 'mean(dp)',
    source: memory('ASTM E1827'),
  },
  {
    symbol: 'q_1',
    name: 'mean air flow',
    unit: 'm³/h',
    expression: 'mean(q_env)',
    source: memory('ASTM E1827'),
  },
  {
    symbol: 'x_1',
    name: 'logarithm of the mean pressure difference',
    unit: '1',
    expression: 'log(dp_1)',
    source: law,
  },
  {
    symbol: 'n',
    name: 'air flow exponent, assumed',
    unit: '1',
    expression: 'n_a',
    source: memory('ASTM E1827: 0.65'),
  },
  {
    symbol: 'C_env',
    name: 'air flow coefficient',
    unit: 'm³/(h·Paⁿ)',
    expression: 'q_1/dp_1^n',
    source: law,
  },
  ...flowOnCurve,
]

const assumedExponent = { symbol: 'n_a', name: 'assumed air flow exponent', unit: '1' }

/** The curve through the mean of readings repeated at one pressure, the exponent assumed. */
export const onePointCurve = chapter({
  title: 'One point',
  inputs: [...readingInputs, assumedExponent],
  formulas: [...curvePoints, ...meanOfStation],
})

/** The curve through the means of readings repeated at two pressures. */
export const twoPointCurve = chapter({
  title: 'Two points',
  inputs: [
    ...readingInputs,
    { symbol: 'hi', name: '1 for a reading of the upper station, else 0', unit: '1', rows: true },
  ],
  formulas: [
    ...curvePoints,
    ...(
      [
        ['1', 'upper', 'hi'],
        ['2', 'lower', '(1 - hi)'],
      ] as const
    ).flatMap(([station, word, rows]) => [
      {
        symbol: `dp_${station}`,
        name: `mean induced pressure difference, ${word} station`,
        unit: 'Pa',
        expression: `sum(${rows} .* dp)/sum(${rows === 'hi' ? 'hi' : '1 - hi'})`,
        source: memory('ASTM E1827'),
      },
      {
        symbol: `q_${station}`,
        name: `mean air flow, ${word} station`,
        unit: 'm³/h',
        expression: `sum(${rows} .* q_env)/sum(${rows === 'hi' ? 'hi' : '1 - hi'})`,
        source: memory('ASTM E1827'),
      },
      {
        symbol: `x_${station}`,
        name: `logarithm of the mean pressure difference, ${word} station`,
        unit: '1',
        expression: `log(dp_${station})`,
        source: law,
      },
    ]),
    {
      symbol: 'n',
      name: 'air flow exponent',
      unit: '1',
      expression: 'log(q_1/q_2)/log(dp_1/dp_2)',
      source: { text: 'Roulet 2008, eq. 4.6', seen: 'read' },
    },
    {
      symbol: 'C_env',
      name: 'air flow coefficient',
      unit: 'm³/(h·Paⁿ)',
      expression: 'q_1/dp_1^n',
      source: law,
    },
    ...flowOnCurve,
  ],
})

const resnet = (what: string) => memory(`ANSI/RESNET/ICC 380, ${what}`)

/**
 * One point with the flow, shown for reference air, corrected by a factor for temperature and one for altitude: the
 * factors hold the density of the air in the device.
 */
export const onePointWithFactors = chapter({
  title: 'One point, corrected for temperature and altitude',
  inputs: [
    ...readingInputs.filter(({ symbol }) => symbol !== 'rho_d' && symbol !== 'rho_x'),
    assumedExponent,
    { symbol: 'T_d', name: 'absolute temperature of the air in the device', unit: 'K' },
    { symbol: 'T_x', name: 'absolute temperature of the air going through the leaks', unit: 'K' },
    { symbol: 'h', name: 'altitude of the site', unit: 'm' },
    { symbol: 'k_f', name: '1 where the factors apply, else 0', unit: '1' },
  ],
  formulas: [
    {
      symbol: 'f_T',
      name: 'temperature factor',
      unit: '1',
      expression: 'sqrt(T_x/T_d)',
      source: derived('density correction for an exponent of 0.5; ANSI/RESNET/ICC 380'),
    },
    {
      symbol: 'f_h',
      name: 'altitude factor',
      unit: '1',
      expression: '1 + a_f*h/l_f',
      source: resnet('altitude correction'),
    },
    ...curvePoints.filter(({ symbol }) => symbol !== 'q_env'),
    {
      symbol: 'q_env',
      name: 'air flow, corrected',
      unit: 'm³/h',
      expression: 'q_m*(1 + k_f*(f_T*f_h - 1))',
      source: resnet('corrected flow'),
    },
    ...meanOfStation,
  ],
})

/** A coefficient whose flows were corrected already. */
export const correctedAlready = chapter({
  title: 'Reference air',
  inputs: [{ symbol: 'C_env', name: 'air flow coefficient', unit: 'm³/(h·Paⁿ)' }],
  formulas: [
    {
      symbol: 'C_L',
      name: 'air leakage coefficient',
      unit: 'm³/(h·Paⁿ)',
      expression: 'C_env',
      source: resnet('the flow is corrected, not the coefficient'),
    },
  ],
})

/** The result increased, where a single reading replaces a whole test. */
export const statedExtension = chapter({
  title: 'Extended result',
  inputs: [
    { symbol: 'q_pr', name: 'air leakage rate', unit: 'm³/h' },
    { symbol: 'n_pr', name: 'air change rate', unit: '1/h' },
  ],
  formulas: [
    {
      symbol: 'q_ext',
      name: 'air leakage rate, extended',
      unit: 'm³/h',
      expression: 'k_ext*q_pr',
      source: resnet('reduced accuracy'),
    },
    {
      symbol: 'n_ext',
      name: 'air change rate, extended',
      unit: '1/h',
      expression: 'k_ext*n_pr',
      source: resnet('reduced accuracy'),
    },
  ],
})
