import { practiceSource } from '../sources.js'
import { apart, plain } from '../words.js'
import type { FindingTexts } from './finding-text.js'

export const windPlace = (at: 'ground' | 'meteorological' | undefined): string =>
  at === 'meteorological' ? 'at the weather station' : 'near the ground'

const calmer = 'Test in calmer weather, or show in the report that the readings were steady.'

/** Wind and temperatures during the test. */
export const conditionTexts = {
  'temperature-height/unknown': {
    severity: 'note',
    message: ({ limit }: { limit: number }) =>
      `The building height was not logged, so height times temperature difference was not checked (limit ${limit} m·K).`,
    remedy: 'Enter the height of the building.',
  },
  'temperature-height/beyond': {
    severity: 'caution',
    message: ({ value, limit }: { value: number; limit: number }) =>
      `Height times temperature difference is ${apart(value, [limit], 0)} m·K (limit ${limit} m·K). A steady zero-flow pressure is unlikely.`,
    remedy: 'Test when the indoor and outdoor temperatures are closer together.',
  },
  'outdoor-temperature': {
    severity: 'note',
    message: ({ value, lowest, highest }: { value: number; lowest: number; highest: number }) =>
      `The outdoor temperature is ${apart(value, [lowest, highest], 1)} °C. The method recommends ${lowest} to ${highest} °C.`,
    remedy: 'Explain in the report why the test was made at this temperature.',
  },
  'barometer-altitude': {
    severity: 'caution',
    source: practiceSource,
    message: ({ value, usual, altitude }: { value: number; usual: number; altitude: number }) =>
      `The barometric pressure is ${plain(value, 0)} Pa. At an altitude of ${plain(altitude, 0)} m it is usually about ${plain(Math.round(usual / 100) * 100, 0)} Pa.`,
    remedy:
      'Enter the pressure at the site. Weather reports often give it reduced to sea level. Check the altitude.',
  },
  'wind/not-logged': {
    severity: 'caution',
    message: 'Wind was not logged, so its limit was not checked.',
    remedy: 'Log the wind speed and where it was measured, or the Beaufort force.',
  },
  'wind/place-not-logged': {
    severity: 'note',
    source: practiceSource,
    message: 'The log does not say where the wind speed was measured. It is checked as wind near the ground.',
    remedy: 'State whether it was measured near the ground or at a weather station.',
  },
  'wind/speed': {
    severity: 'caution',
    message: ({
      speed,
      at,
      limit,
    }: {
      speed: number
      at: 'ground' | 'meteorological' | undefined
      limit: number
    }) => `Wind speed ${windPlace(at)} was ${apart(speed, [limit], 1)} m/s (limit ${limit} m/s).`,
    remedy: calmer,
  },
  'wind/force': {
    severity: 'caution',
    message: ({ force, limit }: { force: number; limit: number }) =>
      `Wind force was Beaufort ${force} (limit ${limit}).`,
    remedy: calmer,
  },
} as const satisfies FindingTexts
