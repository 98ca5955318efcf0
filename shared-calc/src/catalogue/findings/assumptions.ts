import type { Direction } from '../../contract/record/index.js'
import { deviceLaw, practiceSource, standardAtmosphere } from '../sources.js'
import { capital, listed, plain } from '../words.js'
import type { FindingTexts } from './finding-text.js'

/** What was taken because the log does not say. */
export const assumptionTexts = {
  'assumed-humidity': {
    severity: 'note',
    source: practiceSource,
    message: ({ missing, assumed }: { missing: 'both' | 'indoors' | 'outdoors'; assumed: number }) =>
      `Relative humidity ${missing === 'both' ? 'was' : `${missing} was`} not logged. ${plain(assumed * 100)} % is assumed; the error in the air density is below 1 %.`,
    remedy: 'Log the humidity, or accept the assumption.',
  },
  'assumed-pressure/from-altitude': {
    severity: 'caution',
    source: standardAtmosphere,
    message: ({ pressure_Pa, altitude_m }: { pressure_Pa: number; altitude_m: number }) =>
      `Barometric pressure was not logged. ${plain(pressure_Pa, 0)} Pa is assumed from the altitude of ${plain(altitude_m, 0)} m.`,
    remedy: 'Log the barometric pressure at the site (station pressure, not reduced to sea level).',
  },
  'assumed-pressure/sea-level': {
    severity: 'caution',
    source: standardAtmosphere,
    message: ({ pressure_Pa }: { pressure_Pa: number }) =>
      `Neither barometric pressure nor altitude was logged. ${plain(pressure_Pa, 0)} Pa is assumed.`,
    remedy: 'Log the barometric pressure at the site (station pressure, not reduced to sea level).',
  },
  'assumed-reference-density': {
    severity: 'note',
    source: practiceSource,
    message: ({ density_kg_m3 }: { density_kg_m3: number }) =>
      `The reference density of the flow device was not given. ${density_kg_m3} kg/m³ is assumed.`,
    remedy: 'Enter the density from the calibration certificate.',
  },
  'flow-stated-at/not-logged': {
    severity: 'caution',
    source: deviceLaw,
    message: ({
      taken,
      changes,
    }: {
      taken: 'device air' | 'reference air'
      changes: readonly { direction: Direction; change: number }[]
    }) =>
      `It is not stated whether the flows are for device air or reference air. ${capital(taken)} is assumed. If that is wrong, the air leakage rates are ${listed(changes.map(({ direction, change }) => `${plain(Math.abs(change) * 100, 1)} % ${change > 0 ? 'higher' : 'lower'} (${direction})`))}.`,
    remedy:
      'Check the manual. If the device corrects for air density, enter "reference air". If it does not, enter "device air".',
  },
  'assumed-exponent': {
    severity: 'note',
    message: ({ exponent, runs }: { exponent: number; runs: number }) =>
      `An air flow exponent of ${exponent} is assumed for ${runs === 1 ? 'the run' : 'both runs'}. Figures at other pressures depend on it.`,
    remedy: 'Run a multi-point test if the result depends on a figure far from the measured pressure.',
  },
  'assumed-altitude': {
    severity: 'caution',
    message: ({ method }: { method: string }) =>
      `The method corrects for altitude (${method}), but no altitude was logged. Sea level is assumed.`,
    remedy: 'Enter the altitude of the site.',
  },
  'sign-convention': {
    severity: 'note',
    source: practiceSource,
    message: ({ direction, zeroFlow }: { direction: Direction; zeroFlow: boolean }) =>
      `${capital(direction)} was logged with ${direction === 'depressurisation' ? 'positive' : 'negative'} pressures.${zeroFlow ? ' Its zero-flow pressures are read with the same sign convention.' : ''}`,
    remedy: ({ zeroFlow }: { zeroFlow: boolean }) =>
      zeroFlow
        ? 'Check that readings and zero-flow pressures were logged with the same sign convention.'
        : 'Nothing to do: the direction was stated.',
  },
} as const satisfies FindingTexts
