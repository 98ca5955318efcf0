import type { Source } from '../engine/index.js'
import { fittedLineViscous } from './curve-chapters.js'
import { customary } from './customary-units.js'
import { iso9972Limits } from './iso-9972.js'
import type { Method, MethodLimits } from './method.js'

const astm: Source = { text: 'ASTM E779-19', seen: 'memory' }
const form: Source = { text: 'ASTM E779-19, form of the correction', seen: 'read' }

/** Limits of ASTM E779-19, from memory; what is not known of it stays as in ISO 9972:2015 and cites that. */
export const astmE779Limits: MethodLimits = {
  ...iso9972Limits,
  readingsPerDirection: { value: 5, source: astm },
  highestPressure_Pa: { value: 50, source: astm },
  lowestPressure_Pa: { value: 10, source: astm },
  readingSpacing_Pa: { value: 10, source: astm },
  exponent: { lowest: 0.5, highest: 1, source: astm },
  heightTemperature_mK: { value: 200, source: astm, beyond: 'caution' },
  averagingTime_s: { value: 10, source: astm },
}

export const astmTerms = {
  q50: 'air leakage rate at 50 Pa',
  n50: 'air changes an hour at 50 Pa',
  qE50: 'air leakage rate at 50 Pa per envelope area',
  qF50: 'air leakage rate at 50 Pa per floor area',
  ela4: 'effective leakage area at 4 Pa',
  ela10: 'effective leakage area at 10 Pa',
} as const

const { rSquared: _, ...judgedByNoCorrelation } = astmE779Limits

export const astmE779: Method = {
  id: 'astm-e779-19',
  title: 'ASTM E779-19',
  volumeBasis: 'net',
  volumeBasisSource: astm,
  limits: {
    ...judgedByNoCorrelation,
    heightTemperature_mK: { value: 200, source: astm, beyond: 'invalidates' },
    directions: { asked: 'both', source: astm },
  },
  formulas: fittedLineViscous,
  official: [
    {
      term: 'air leakage coefficient C0',
      from: 'standard',
      symbol: 'C_L',
      unit: 'm3/(h·Pa^n)',
      source: form,
    },
    { term: 'pressure exponent n', from: 'curve', symbol: 'n', unit: '1', source: astm },
    {
      term: 'effective leakage area at 4 Pa',
      from: { of: 'mean', at_Pa: 4 },
      symbol: 'A_L',
      unit: 'cm2',
      customary: customary.squareInch,
      source: astm,
    },
  ],
  terms: astmTerms,
  notes: [
    'The coefficient is corrected to reference density and viscosity; the leakage area is taken with a discharge coefficient of 1.',
    'Limits are from memory; those that cite ISO 9972:2015 are taken from there because the text of ASTM E779 was not at hand.',
  ],
}
