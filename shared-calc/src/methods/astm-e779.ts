import { customary } from '../catalogue/shown-figure.js'
import type { Source } from '../engine/index.js'
import { fittedLineViscous } from './curve-chapters.js'
import { iso9972Limits } from './iso-9972.js'
import { type Method, type MethodLimits, type OfficialFigure, takenOver } from './method.js'

const astm: Source = { text: 'ASTM E779-19', seen: 'memory' }
const form: Source = { text: 'ASTM E779-19, form of the correction', seen: 'read' }

const edition2003 = (text: string): Source => ({ text: `ASTM E779-03, ${text}`, seen: 'read' })
const { rSquared: _, ...fromIso } = takenOver(iso9972Limits)

/** Limits of ASTM E779; what is not known about it is taken over from ISO 9972:2015 and cites that. */
export const astmE779Limits: MethodLimits = {
  ...fromIso,
  readingsPerDirection: { value: 5, source: astm },
  highestPressure_Pa: { value: 50, source: astm },
  lowestPressure_Pa: { value: 10, source: edition2003('10 to 60 Pa') },
  topPressure_Pa: { value: 60, slack_Pa: 2, source: edition2003('10 to 60 Pa') },
  zeroFlowSamples: { value: 1, source: astm },
  zeroFlowDuration_s: 10,
  readingSpacing_Pa: { value: 10, source: astm },
  exponent: { lowest: 0.5, highest: 1, source: astm },
  heightTemperature_mK: { value: 200, source: edition2003('8.4'), beyond: 'caution' },
  windGround_m_s: { value: 2, source: edition2003('8.5: preferred') },
  outdoorTemperature_C: { lowest: 5, highest: 35, source: edition2003('8.5: preferred') },
  accuracy: {
    gauge_relative: { value: 0.05, source: edition2003('±5 % of the pressure') },
    flow_relative: { value: 0.05, source: astm },
  },
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

export const astmE779: Method = {
  id: 'astm-e779-19',
  title: 'ASTM E779-19',
  volumeBasis: 'net',
  volumeBasisSource: astm,
  limits: {
    ...astmE779Limits,
    heightTemperature_mK: { value: 200, source: edition2003('8.4: do not test'), beyond: 'invalidates' },
    directions: { asked: 'both', source: { text: 'ASTM E779-19, scope', seen: 'read' } },
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
    ...(['lower', 'upper'] as const).map(
      (end): OfficialFigure => ({
        term: `${end} 95 % limit of the effective leakage area at 4 Pa, fit scatter only`,
        from: { of: 'run', at_Pa: 4 },
        symbol: end === 'lower' ? 'A_L_lo' : 'A_L_hi',
        unit: 'cm2',
        customary: customary.squareInch,
        source: { text: 'ASTM E779, annex A1; Roulet 2008, eq. 7.13–7.21', seen: 'read' },
      }),
    ),
  ],
  terms: astmTerms,
  notes: [
    'The coefficient is corrected to reference density and viscosity; the leakage area is taken with a discharge coefficient of 1.',
    'Limits are from memory; those that cite ISO 9972:2015 are taken from there because the text of ASTM E779 was not at hand.',
  ],
}
