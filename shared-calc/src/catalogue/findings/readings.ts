import type { Direction } from '../../contract/record/index.js'
import { practiceSource } from '../sources.js'
import { apart, capital, counted, listed, plain, readingName } from '../words.js'
import type { FindingTexts } from './finding-text.js'

/** Pressures and flows as they were read. */
export const readingTexts = {
  'too-few-readings': {
    severity: 'invalidates',
    message: ({ direction, count, limit }: { direction: Direction; count: number; limit: number }) =>
      `${capital(direction)} has ${counted(count, 'reading')} (at least ${limit} needed).`,
    remedy: 'Take more readings at other pressures.',
  },
  'highest-pressure/too-low': {
    severity: 'invalidates',
    message: ({ direction, highest, limit }: { direction: Direction; highest: number; limit: number }) =>
      `${capital(direction)} reaches only ${apart(highest, [limit], 1)} Pa (at least ${limit} Pa needed).`,
    remedy: 'Use a larger range or a second device, or look for an opening left unsealed.',
  },
  'highest-pressure/large-building': {
    severity: 'caution',
    message: ({ direction, highest, reason }: { direction: Direction; highest: number; reason: string }) =>
      `${capital(direction)} reaches only ${plain(highest, 1)} Pa, accepted for a large building: "${reason}".`,
    remedy: 'State the reason in the report.',
  },
  'lowest-pressure/reading': {
    severity: 'caution',
    message: ({
      direction,
      reading,
      pressure,
      limit,
    }: {
      direction: Direction
      reading: number
      pressure: number
      limit: number
    }) =>
      `${readingName(direction, reading)} was taken at ${apart(pressure, [limit], 1)} Pa (lowest usable pressure in this test: ${apart(limit, [pressure], 1)} Pa).`,
    remedy: 'Leave the reading out, or repeat it in calmer weather.',
  },
  'reading-spacing': {
    severity: 'caution',
    message: ({
      direction,
      lower,
      upper,
      limit,
    }: {
      direction: Direction
      lower: number
      upper: number
      limit: number
    }) =>
      `${capital(direction)} has no reading between ${plain(lower, 1)} and ${plain(upper, 1)} Pa, a gap of ${plain(upper - lower, 1)} Pa (steps of about ${limit} Pa expected).`,
    remedy: 'Take a reading between the two.',
  },
  'pressure-ceiling': {
    severity: 'caution',
    source: practiceSource,
    message: ({
      direction,
      reading,
      pressure,
      limit,
    }: {
      direction: Direction
      reading: number
      pressure: number
      limit: number
    }) =>
      `${readingName(direction, reading)} was taken at ${apart(pressure, [limit], 1)} Pa. Above ${limit} Pa linings and membranes may be damaged.`,
    remedy: ({ limit }: { limit: number }) =>
      `Stay at or below ${limit} Pa. Inspect boards and membranes before you go on.`,
  },
  'top-pressure': {
    severity: 'caution',
    message: ({
      direction,
      reading,
      pressure,
      limit,
    }: {
      direction: Direction
      reading: number
      pressure: number
      limit: number
    }) =>
      `${readingName(direction, reading)} was taken at ${apart(pressure, [limit], 1)} Pa, above the range of the method (up to ${limit} Pa).`,
    remedy: 'Leave the reading out, or repeat it inside the range.',
  },
  'duplicate-reading': {
    severity: 'note',
    source: practiceSource,
    message: ({
      direction,
      first,
      second,
      pressure,
    }: {
      direction: Direction
      first: number
      second: number
      pressure: number
    }) =>
      `${capital(direction)}, readings ${first + 1} and ${second + 1} are identical (${plain(pressure, 1)} Pa).`,
    remedy: 'Check whether a reading was copied. If so, leave one out.',
  },
  'identical-runs': {
    severity: 'caution',
    source: practiceSource,
    message: 'The readings of both directions are identical.',
    remedy: 'Check whether one run was copied. If so, enter the readings that were taken.',
  },
  'station-pressure': {
    severity: 'caution',
    message: ({
      direction,
      reading,
      pressure,
      method,
      stations,
    }: {
      direction: Direction
      reading: number
      pressure: number
      method: string
      stations: readonly number[]
    }) =>
      `${readingName(direction, reading)} was taken at ${plain(pressure, 1)} Pa (required by ${method}: ${listed(stations.map((station) => plain(station, 1)))} Pa).`,
    remedy: ({ station }: { station: number }) => `Repeat the reading closer to ${plain(station, 1)} Pa.`,
  },
  'station-repeats': {
    severity: 'invalidates',
    message: ({
      direction,
      count,
      station,
      limit,
    }: {
      direction: Direction
      count: number
      station: number
      limit: number
    }) =>
      `${capital(direction)} has ${counted(count, 'reading')} near ${plain(station, 1)} Pa (at least ${limit} needed).`,
    remedy: ({ station }: { station: number }) => `Repeat the reading near ${plain(station, 1)} Pa.`,
  },
} as const satisfies FindingTexts
