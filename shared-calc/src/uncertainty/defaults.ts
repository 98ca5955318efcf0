import type { UncertaintyInputs } from '../contract/record/index.js'
import type { Source } from '../engine/index.js'

/** A default standard uncertainty, with where it comes from. */
export interface DefaultUncertainty {
  readonly term: string
  readonly value: number
  readonly unit: string
  readonly source: Source
}

const practice = (text: string): Source => ({
  text: `common practice, no source: ${text}`,
  seen: 'common practice',
})
const astm = (text: string): Source => ({ text: `ASTM E779, ${text}`, seen: 'memory' })
const iso = (text: string): Source => ({ text: `ISO 9972:2015, ${text}`, seen: 'memory' })
/** Houses drawn at random and balanced: four to six openings of unlike exponents, heights and sides. */
const openings = (text: string): Source => ({
  text: `simulated houses of unlike openings: ${text}`,
  seen: 'derived',
})
const steadyWind: Source = {
  text: 'Carrié and Leprince 2014: steady wind, 3 % at 50 Pa up to 6 m/s, 11 % up to 10 m/s; as the half-width of a uniform distribution',
  seen: 'read',
}

export type DefaultedInput = Exclude<keyof UncertaintyInputs, undefined>

/**
 * Standard uncertainties taken where the record gives none; a note names each. Limits of error ±a count as an even
 * spread, a/√3.
 */
export const defaultUncertainties: Readonly<Record<DefaultedInput, DefaultUncertainty>> = {
  flowCalibration_relative: {
    term: 'flow calibration',
    value: 0.05 / Math.sqrt(3),
    unit: '1',
    source: astm('flow device within ±5 %'),
  },
  rangeStep_relative: {
    term: 'step between the ranges of the flow device',
    value: 0.02,
    unit: '1',
    source: practice('2 %, each range being calibrated by itself'),
  },
  flowReading_relative: { term: 'one flow reading', value: 0.005, unit: '1', source: practice('0.5 %') },
  gaugeSpan_relative: {
    term: 'pressure gauge',
    value: 0.01 / Math.sqrt(3),
    unit: '1',
    source: practice('gauge within ±1 % of reading'),
  },
  pressureReading_Pa: { term: 'one pressure reading', value: 0.1, unit: 'Pa', source: practice('0.1 Pa') },
  zeroFlow_Pa: {
    term: 'zero-flow pressure, in addition to its scatter',
    value: 0.03,
    unit: 'Pa',
    source: practice('resolution 0.1 Pa'),
  },
  windShift: {
    term: 'wind, shift of the mean pressure',
    value: 0.11 / Math.sqrt(3),
    unit: '1',
    source: steadyWind,
  },
  windSpread: {
    term: 'wind, spread of the pressure around the envelope',
    value: 0.3,
    unit: '1',
    source: {
      text: 'standard deviation of the surface pressure coefficients at the openings of a low-rise house half sheltered: about 0.35 in the tables of the AIVC guide to energy-efficient ventilation, 1996; 0.3 where few openings take most of the flow',
      seen: 'memory',
    },
  },
  stackShift: {
    term: 'stack, shift of the effective zero',
    value: 0.08,
    unit: '1',
    source: openings('0.06 to 0.1 of the stack pressure over the height of the building'),
  },
  stackSpread: {
    term: 'stack, spread of the pressure over the height',
    value: 0.1,
    unit: '1',
    source: openings('variance over the square of the stack pressure, 1/12 where openings are spread evenly'),
  },
  leakExponentSpread: {
    term: "spread of the openings' exponents",
    value: 0.07,
    unit: '1',
    source: openings('standard deviation of the exponents, weighted by flow'),
  },
  zeroFlowWind: {
    term: 'variation of the zero-flow pressure in wind',
    value: 0.1,
    unit: '1',
    source: openings('gusts over two periods of half a minute, share of the dynamic pressure'),
  },
  indoorTemperature_K: {
    term: 'indoor temperature',
    value: 0.5 / Math.sqrt(3),
    unit: 'K',
    source: iso('thermometer within ±0.5 K'),
  },
  outdoorTemperature_K: {
    term: 'outdoor temperature',
    value: 0.5 / Math.sqrt(3),
    unit: 'K',
    source: iso('thermometer within ±0.5 K'),
  },
  barometricPressure_Pa: {
    term: 'barometric pressure',
    value: 100,
    unit: 'Pa',
    source: practice('1 hPa if measured'),
  },
  relativeHumidity: {
    term: 'relative humidity',
    value: 0.05,
    unit: '1',
    source: practice('5 % if measured'),
  },
  volume_relative: { term: 'internal volume', value: 0.02, unit: '1', source: practice('2 %') },
  envelopeArea_relative: { term: 'envelope area', value: 0.02, unit: '1', source: practice('2 %') },
  floorArea_relative: { term: 'floor area', value: 0.02, unit: '1', source: practice('2 %') },
  assumedExponent: {
    term: 'assumed exponent',
    value: 0.057,
    unit: '1',
    source: { text: 'Chan et al. 2013: standard deviation over 7 000 houses', seen: 'read' },
  },
  otherDirection_relative: {
    term: 'direction not measured',
    value: 0.03,
    unit: '1',
    source: practice('3 %'),
  },
  acceptedRisk: { term: 'accepted risk', value: 0.05, unit: '1', source: practice('5 %') },
}

/** Standard uncertainty of a barometric pressure that nobody read, Pa: weather at a known altitude, or neither known. */
export const UNREAD_BAROMETER_Pa = { altitudeKnown: 1000, nothingKnown: 3000 } as const
/** Standard uncertainty of a humidity that nobody read: a uniform distribution from 0.1 to 0.9. */
export const UNREAD_HUMIDITY = 0.8 / (2 * Math.sqrt(3))
/** Wind speed assumed where neither speed nor force was logged, m/s: the limit of the methods near the ground. */
export const ASSUMED_WIND_m_s = 3
/** Height assumed for the stack pressure where none was logged, m: two storeys. */
export const ASSUMED_HEIGHT_m = 6
