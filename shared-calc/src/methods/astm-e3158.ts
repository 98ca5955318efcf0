import { customary } from '../catalogue/shown-figure.js'
import type { Source } from '../engine/index.js'
import { astmE779Limits, astmTerms } from './astm-e779.js'
import { fittedLineViscous } from './curve-chapters.js'
import { type Method, takenOver } from './method.js'

const memory: Source = { text: 'ASTM E3158', seen: 'memory' }
const seen: Source = {
  text: 'ASTM E3158, scope 1.5–1.8; restated in California Title 24, NA5.5',
  seen: 'read',
}

const {
  heightTemperature_mK: _height,
  windGround_m_s: _ground,
  windMeteorological_m_s: _station,
  beaufort: _force,
  outdoorTemperature_C: _outdoor,
  topPressure_Pa: _top,
  ...fromE779
} = takenOver(astmE779Limits)

/** Large or many-zone buildings: 75 Pa, several devices running together. */
const largeBuildings: Omit<Method, 'id' | 'title'> = {
  volumeBasis: 'overall internal',
  volumeBasisSource: memory,
  limits: {
    ...fromE779,
    readingsPerDirection: { value: 5, source: seen },
    highestPressure_Pa: { value: 50, source: seen },
    highestPressureLargeBuilding_Pa: { value: 25, source: seen },
    lowestPressure_Pa: { value: 25, source: seen },
    exponent: { lowest: 0.45, highest: 1, source: seen },
    zeroFlowSamples: { value: 1, source: memory },
    averagingTime_s: { value: 20, source: memory },
  },
  formulas: fittedLineViscous,
  referencePressures: [75],
  official: [
    {
      term: 'air leakage rate at 75 Pa',
      from: { of: 'mean', at_Pa: 75 },
      symbol: 'q_pr',
      unit: 'm3/h',
      customary: customary.cfm,
      source: seen,
    },
    {
      term: 'air leakage rate at 75 Pa per envelope area',
      from: { of: 'derived', at_Pa: 75 },
      symbol: 'q_E',
      unit: 'm3/(h·m2)',
      customary: customary.cfmPerSquareFoot,
      source: seen,
    },
    { term: 'pressure exponent n', from: 'curve', symbol: 'n', unit: '1', source: seen },
  ],
  terms: astmTerms,
  notes: [
    'The reference pressure is 75 Pa; flows of devices running together add (record@2: `devices` of a reading).',
    'One direction is enough; where both were run, their mean is reported.',
    'At least 5 readings from 25 Pa to at least 50 Pa; where 75 Pa is not reached the rate there is extrapolated.',
  ],
}

export const astmE3158: Method = { ...largeBuildings, id: 'astm-e3158-18', title: 'ASTM E3158-18' }
export const astmE3158Edition24: Method = {
  ...largeBuildings,
  id: 'astm-e3158-24',
  title: 'ASTM E3158-24',
}
