import { chapter, derived, memory, practice } from './chapter.js'

/** From the lowest to the highest pressure to set, and how many readings that takes. */
export const pressureSpan = chapter({
  title: 'Pressures to set',
  inputs: [
    { symbol: 'dp_min', name: 'lowest usable pressure difference', unit: 'Pa' },
    { symbol: 'dp_top', name: 'highest pressure difference to set', unit: 'Pa' },
    { symbol: 'm_p', name: 'margin above the lowest pressure, for unsteady readings', unit: 'Pa' },
    { symbol: 'dp_gap', name: 'largest step between readings', unit: 'Pa' },
    { symbol: 'N_min', name: 'smallest number of readings', unit: '1' },
  ],
  formulas: [
    {
      symbol: 'dp_low',
      name: 'lowest pressure difference to set',
      unit: 'Pa',
      expression: 'round(dp_min + m_p, 0)',
      source: practice,
    },
    {
      symbol: 'N_r',
      name: 'number of readings',
      unit: '1',
      expression: 'max(N_min, round((dp_top - dp_low)/dp_gap + 0.5, 0) + 1)',
      source: memory('ISO 9972:2015, 5.3.4: number and spacing of readings'),
    },
    {
      symbol: 'd_p',
      name: 'step between readings',
      unit: 'Pa',
      expression: '(dp_top - dp_low)/(N_r - 1)',
      source: derived('even steps'),
    },
  ],
})

/** What the gauge shows at the stations of a method that repeats its readings at one or two pressures. */
export const stationsToSet = chapter({
  title: 'Readings of the gauge at the stations',
  inputs: [
    { symbol: 'dp', name: 'induced pressure difference of a station', unit: 'Pa', rows: true },
    { symbol: 'sign', name: '1 for pressurisation, −1 for depressurisation', unit: '1' },
    { symbol: 'dp_0', name: 'zero-flow pressure', unit: 'Pa' },
  ],
  formulas: [
    {
      symbol: 'dp_g',
      name: 'pressure difference the gauge shows',
      unit: 'Pa',
      expression: 'sign*dp + dp_0',
      source: memory('ISO 9972:2015, 5.3.3'),
    },
  ],
})

/** What the gauge shows at each pressure to set: the zero-flow pressure is part of every reading. */
export const pressuresToSet = chapter({
  title: 'Readings of the gauge',
  inputs: [
    { symbol: 'k_r', name: 'steps below the highest pressure', unit: '1', rows: true },
    { symbol: 'dp_top', name: 'highest pressure difference to set', unit: 'Pa' },
    { symbol: 'd_p', name: 'step between readings', unit: 'Pa' },
    { symbol: 'sign', name: '1 for pressurisation, −1 for depressurisation', unit: '1' },
    { symbol: 'dp_0', name: 'zero-flow pressure', unit: 'Pa' },
  ],
  formulas: [
    {
      symbol: 'dp',
      name: 'induced pressure difference',
      unit: 'Pa',
      expression: 'dp_top - k_r*d_p',
      source: derived('even steps, highest first'),
    },
    {
      symbol: 'dp_g',
      name: 'pressure difference the gauge shows',
      unit: 'Pa',
      expression: 'sign*dp + dp_0',
      source: memory('ISO 9972:2015, 5.3.3'),
    },
  ],
})
