import type { Direction } from '../../contract/record/index.js'
import { practiceSource } from '../sources.js'
import { capital, plain } from '../words.js'
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
    source: practiceSource,
    message: ({ direction, times, limit }: { direction: Direction; times: number; limit: number }) =>
      `${capital(direction)}: the readings scatter ${plain(times, 1)} times as much as the instruments explain (limit ${limit}). The uncertainty includes the scatter found.`,
    remedy: 'Look for gusts or a change during the run. Average over a longer time.',
  },
} as const satisfies FindingTexts
