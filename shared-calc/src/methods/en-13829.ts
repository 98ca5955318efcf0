import type { Source } from '../engine/index.js'
import { fittedLine } from './curve-chapters.js'
import { iso9972Limits, viscosityNote } from './iso-9972.js'
import type { Limit, Method, MethodLimits } from './method.js'

const standard: Source = { text: 'EN 13829:2001', seen: 'memory' }
const restated = ({ value, source }: Limit): Limit => ({
  value,
  source: source.seen === 'common practice' ? source : standard,
})

const shared = iso9972Limits

/** Limits of EN 13829:2001: the same numbers as its successor's; clause numbers are not known, so none is cited. */
const en13829Limits: MethodLimits = {
  ...shared,
  readingsPerDirection: restated(shared.readingsPerDirection),
  highestPressure_Pa: restated(shared.highestPressure_Pa),
  highestPressureLargeBuilding_Pa: restated(shared.highestPressureLargeBuilding_Pa),
  lowestPressure_Pa: restated(shared.lowestPressure_Pa),
  zeroFlowMultiple: restated(shared.zeroFlowMultiple),
  readingSpacing_Pa: restated(shared.readingSpacing_Pa),
  zeroFlow_Pa: restated(shared.zeroFlow_Pa),
  zeroFlowSamples: restated(shared.zeroFlowSamples),
  exponent: { ...shared.exponent, source: standard },
  rSquared: { value: 0.98, source: standard },
  heightTemperature_mK: { ...shared.heightTemperature_mK, source: standard },
  windGround_m_s: restated(shared.windGround_m_s),
  windMeteorological_m_s: { ...shared.windMeteorological_m_s, source: { ...standard, seen: 'read' } },
  beaufort: { ...shared.beaufort, source: { ...standard, seen: 'read' } },
}

export const en13829: Method = {
  id: 'en-13829:2001',
  title: 'EN 13829:2001',
  volumeBasis: 'net',
  volumeBasisSource: { text: 'EN 13829:2001, definitions', seen: 'read' },
  limits: en13829Limits,
  formulas: fittedLine,
  terms: {
    q50: 'air leakage rate at 50 Pa, V50',
    n50: 'air change rate at 50 Pa, n50',
    qE50: 'air permeability at 50 Pa (per envelope area)',
    qF50: 'specific leakage rate at 50 Pa, w50 (per floor area)',
    ela4: 'effective leakage area at 4 Pa',
    ela10: 'effective leakage area at 10 Pa',
  },
  notes: [
    'Withdrawn and replaced by ISO 9972:2015; kept for tests that contracts or older rules still ask for.',
    'Clause numbers were not at hand.',
    viscosityNote,
  ],
}
