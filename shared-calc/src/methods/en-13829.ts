import type { Source } from '../engine/index.js'
import { fittedLine } from './curve-chapters.js'
import { iso9972Limits, viscosityNote } from './iso-9972.js'
import type { Limit, Method, MethodLimits } from './method.js'

const standard: Source = { text: 'EN 13829:2001', seen: 'memory' }
const read = (text: string): Source => ({ text: `EN 13829:2001, ${text}`, seen: 'read' })
const restated = ({ value, source }: Limit): Limit => ({
  value,
  source: source.seen === 'common practice' ? source : standard,
})

const { rSquared: _, ...shared } = iso9972Limits

/**
 * Limits of EN 13829:2001, from memory where not marked otherwise; clause numbers are not known, so none is cited. It
 * judges no correlation, allows twice the height times temperature difference, and asks less of the instruments.
 */
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
  heightTemperature_mK: { value: 500, source: standard, beyond: 'caution' },
  windGround_m_s: { value: 3, source: standard },
  windMeteorological_m_s: { value: 6, source: read('wind') },
  beaufort: { value: 3, source: read('wind') },
  accuracy: {
    gauge_Pa: { value: 2, source: read('±2 Pa from 0 to 60 Pa') },
    flow_relative: { value: 0.07, source: read('±7 % of the reading') },
    temperature_K: { value: 1, source: read('±1 K') },
  },
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
    'Withdrawn and replaced by ISO 9972:2015; some contracts and older rules still require it.',
    'Clause numbers were not at hand. Preparation is by method A (building in use) or method B (envelope).',
    'It differs from ISO 9972:2015 in substance: net volume, ±2 Pa, ±1 K, no limit on r², 500 m·K.',
    viscosityNote,
  ],
}
