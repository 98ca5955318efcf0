import type { Direction } from '../../contract/record/index.js'
import { practiceSource } from '../sources.js'
import { apart, capital, plain } from '../words.js'
import type { FindingTexts } from './finding-text.js'

/** What the uncertainty budget assumes, and what it found in the readings. */
export const uncertaintyTexts = {
  'assumed-uncertainty': {
    severity: 'note',
    message: ({ values }: { values: readonly string[] }) =>
      `Default standard uncertainties are used: ${values.join('; ')}.`,
    remedy: 'Enter the values from calibration certificates and your own checks.',
  },
  'assumed-wind': {
    severity: 'caution',
    source: practiceSource,
    message: ({ speed }: { speed: number }) =>
      `Wind was not logged. The uncertainty assumes a wind speed of ${speed} m/s.`,
    remedy: 'Log the wind speed or the Beaufort force.',
  },
  'scatter-unexpected': {
    severity: 'note',
    ofOneDirection: true,
    source: practiceSource,
    message: ({ direction, times, limit }: { direction: Direction; times: number; limit: number }) =>
      `${capital(direction)}: the readings scatter ${apart(times, [limit], 1)} times as much as the instruments explain (limit ${limit}). The uncertainty includes the scatter found.`,
    remedy: 'Look for gusts or a change during the run. Average over a longer time.',
  },
  'scatter-unexpected/stated-as-none': {
    severity: 'note',
    ofOneDirection: true,
    source: practiceSource,
    message: ({ direction }: { direction: Direction }) =>
      `${capital(direction)}: the readings scatter, but the record states a scatter of 0. The uncertainty includes the scatter found.`,
    remedy: 'State the scatter of one pressure reading and one flow reading, or leave both empty.',
  },
  'wind-at-station': {
    severity: 'note',
    source: { text: 'ISO 9972:2015, 5.1.4: 3 m/s near the ground, 6 m/s at the station', seen: 'memory' },
    message: ({ station, house }: { station: number; house: number }) =>
      `The wind speed of ${plain(station, 1)} m/s was measured at a weather station. The uncertainty assumes ${plain(house, 1)} m/s at the house.`,
    remedy: 'Log the wind speed near the ground at the house.',
  },
  'assumed-zero-flow-spread': {
    severity: 'note',
    ofOneDirection: true,
    source: practiceSource,
    message: ({ direction, spread }: { direction: Direction; spread: number }) =>
      `${capital(direction)}: the scatter of the zero-flow pressure is not known. The uncertainty assumes ${plain(spread, 1)} Pa.`,
    remedy: 'Log at least two zero-flow pressures before or after the readings.',
  },
  'assumed-height': {
    severity: 'note',
    source: practiceSource,
    message: ({ height }: { height: number }) =>
      `The building height was not logged. The uncertainty from stack pressure assumes ${height} m.`,
    remedy: 'Enter the height of the building.',
  },
  'uncertainty-unbounded': {
    severity: 'caution',
    source: practiceSource,
    message: ({ block }: { block: string }) =>
      `No uncertainty is given: "${block}" has no finite result. The results of the method are not affected.`,
    remedy:
      'Look for readings close to zero or far from the curve, and check that not every uncertainty is 0.',
  },
} as const satisfies FindingTexts
