import type { Direction } from '../../contract/record/index.js'
import { practiceSource } from '../sources.js'
import { capital, plain } from '../words.js'
import type { FindingTexts } from './finding-text.js'

const spread = 'Take readings from about 10 Pa to at least 50 Pa.'

/** Whether the readings reach far enough for the figures drawn from them. */
export const readingSpanTexts = {
  'reading-span/one-station': {
    severity: 'invalidates',
    ofOneDirection: true,
    source: practiceSource,
    message: ({ direction, lowest, highest }: { direction: Direction; lowest: number; highest: number }) =>
      `${capital(direction)}: all readings are between ${plain(lowest, 3)} and ${plain(highest, 3)} Pa. One pressure is not enough for a curve.`,
    remedy: spread,
  },
  'reading-span/far': {
    severity: 'invalidates',
    ofOneDirection: true,
    source: practiceSource,
    message: ({
      direction,
      lowest,
      highest,
      pressure_Pa,
    }: {
      direction: Direction
      lowest: number
      highest: number
      pressure_Pa: number
    }) =>
      `${capital(direction)}: the readings from ${plain(lowest, 1)} to ${plain(highest, 1)} Pa are too far from ${plain(pressure_Pa, 1)} Pa for a result there.`,
    remedy: spread,
  },
  'reading-span/narrow': {
    severity: 'caution',
    ofOneDirection: true,
    source: practiceSource,
    message: ({
      direction,
      lowest,
      highest,
      factor,
    }: {
      direction: Direction
      lowest: number
      highest: number
      factor: number
    }) =>
      `${capital(direction)}: the readings span only ${plain(lowest, 1)} to ${plain(highest, 1)} Pa. The air flow exponent is uncertain if the highest pressure is less than ${factor === 2 ? 'twice' : `${factor} times`} the lowest.`,
    remedy: spread,
  },
  'reading-span/vague': {
    severity: 'caution',
    ofOneDirection: true,
    source: practiceSource,
    message: ({
      direction,
      width,
      limit,
      pressure_Pa,
    }: {
      direction: Direction
      width: number
      limit: number
      pressure_Pa: number
    }) =>
      `${capital(direction)}: the 95 % interval of the air flow exponent is ${plain(width, 2)} wide (limit ${limit}). The result at ${plain(pressure_Pa, 1)} Pa depends on it.`,
    remedy: 'Take more readings, further apart, in calmer weather.',
  },
} as const satisfies FindingTexts
