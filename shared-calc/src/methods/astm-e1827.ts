import { customary } from '../catalogue/shown-figure.js'
import type { Source } from '../engine/index.js'
import { astmE779Limits, astmTerms } from './astm-e779.js'
import { onePoint, twoPoint } from './curve-chapters.js'
import { type Method, type OfficialFigure, takenOver } from './method.js'

const astm: Source = { text: 'ASTM E1827-22', seen: 'memory' }
const repeats = { value: 5, source: astm }

const official: readonly OfficialFigure[] = [
  {
    term: 'air leakage rate at 50 Pa',
    from: { of: 'mean', at_Pa: 50 },
    symbol: 'q_pr',
    unit: 'm3/h',
    customary: customary.cfm,
    source: astm,
  },
  {
    term: 'air changes an hour at 50 Pa',
    from: { of: 'derived', at_Pa: 50 },
    symbol: 'n_pr',
    unit: '1/h',
    source: astm,
  },
]

const shared = {
  volumeBasis: 'net',
  volumeBasisSource: astm,
  limits: {
    ...takenOver(astmE779Limits),
    zeroFlowSamples: { value: 1, source: astm },
    averagingTime_s: { value: 10, source: astm },
  },
  terms: astmTerms,
} as const

/** Readings repeated near 50 Pa, the exponent taken as 0.65. */
export const astmE1827OnePoint: Method = {
  ...shared,
  id: 'astm-e1827-22-one-point',
  title: 'ASTM E1827-22, one-point',
  formulas: onePoint,
  fewestReadings: 1,
  assumedExponent: { value: 0.65, source: astm },
  stations: { pressures_Pa: [50], slack: 0.1, repeats },
  official,
  notes: [
    'The exponent is assumed. Only the result at 50 Pa comes from the method; results at other pressures depend on the assumption.',
    'Stations, repeats and exponent are from memory; limits that cite another standard are taken from there.',
  ],
}

/** Readings repeated near 50 and near 12.5 Pa, the exponent found from the two means. */
export const astmE1827TwoPoint: Method = {
  ...shared,
  id: 'astm-e1827-22-two-point',
  title: 'ASTM E1827-22, two-point',
  formulas: twoPoint,
  fewestReadings: 2,
  stations: { pressures_Pa: [50, 12.5], slack: 0.15, repeats },
  official: [
    ...official,
    {
      term: 'effective leakage area at 4 Pa',
      from: { of: 'mean', at_Pa: 4 },
      symbol: 'A_L',
      unit: 'cm2',
      customary: customary.squareInch,
      source: astm,
    },
    { term: 'pressure exponent n', from: 'curve', symbol: 'n', unit: '1', source: astm },
  ],
  notes: [
    'Stations and repeats are from memory; limits that cite another standard are taken from there.',
    'Two pressures cannot show whether the curve is straight. If that matters, run a multi-point test.',
  ],
}
