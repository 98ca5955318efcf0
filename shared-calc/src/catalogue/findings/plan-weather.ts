import { practiceSource, standardAtmosphere } from '../sources.js'
import { apart, plain } from '../words.js'
import { windPlace } from './conditions.js'
import type { FindingTexts } from './finding-text.js'

const calmer = 'Choose a calmer day, or the calmest hour of the day.'
const closer = 'Choose an hour when the indoor and outdoor temperatures are closer together.'

/** What the forecast means for a planned test, and what is assumed of the air. */
export const planWeatherTexts = {
  'wind/forecast-missing': {
    severity: 'note',
    message: 'The plan has no wind forecast, so the wind limit was not checked.',
    remedy: 'Enter the forecast wind speed and where it applies, or the Beaufort force.',
  },
  'wind/forecast-place': {
    severity: 'note',
    source: practiceSource,
    message:
      'The plan does not say where the forecast wind speed applies. It is checked as wind near the ground.',
    remedy: 'Enter where it applies. Forecasts usually give the wind at a weather station.',
  },
  'wind/forecast-speed': {
    severity: 'caution',
    message: ({
      speed,
      at,
      limit,
    }: {
      speed: number
      at: 'ground' | 'meteorological' | undefined
      limit: number
    }) => `Forecast wind speed ${windPlace(at)} is ${apart(speed, [limit], 1)} m/s (limit ${limit} m/s).`,
    remedy: calmer,
  },
  'wind/forecast-force': {
    severity: 'caution',
    message: ({ force, limit }: { force: number; limit: number }) =>
      `Forecast wind force is Beaufort ${force} (limit ${limit}).`,
    remedy: calmer,
  },
  'temperature-height/forecast-missing': {
    severity: 'note',
    message: ({ missing, limit }: { missing: 'height' | 'temperatures' | 'both'; limit: number }) =>
      `${missing === 'height' ? 'The building height is' : missing === 'temperatures' ? 'The forecast temperatures are' : 'The building height and forecast temperatures are'} missing, so height times temperature difference (limit ${limit} m·K) and stack pressure were not checked.`,
    remedy: ({ missing }: { missing: 'height' | 'temperatures' | 'both' }) =>
      missing === 'height'
        ? 'Enter the building height.'
        : missing === 'temperatures'
          ? 'Enter the forecast temperatures.'
          : 'Enter the height and the temperatures.',
  },
  'temperature-height/forecast': {
    severity: 'caution',
    message: ({ value, limit }: { value: number; limit: number }) =>
      `Height times temperature difference will be ${apart(value, [limit], 0)} m·K (limit ${limit} m·K). A steady zero-flow pressure is unlikely.`,
    remedy: closer,
  },
  'stack-pressure': {
    severity: 'caution',
    message: ({ pressure, limit }: { pressure: number; limit: number }) =>
      `Stack pressure alone will be about ${apart(pressure, [-limit, limit], 1)} Pa at the foot of the building (limit for the zero-flow pressure: ±${limit} Pa).`,
    remedy: closer,
  },
  'assumed-densities': {
    severity: 'note',
    source: practiceSource,
    message: ({ density_kg_m3 }: { density_kg_m3: number }) =>
      `The plan has no temperatures. An air density of ${density_kg_m3} kg/m³ is assumed indoors and outdoors.`,
    remedy: 'Enter the expected temperatures.',
  },
  'assumed-humidity/plan': {
    severity: 'note',
    source: practiceSource,
    message: ({ assumed }: { assumed: number }) =>
      `A relative humidity of ${plain(assumed * 100)} % is assumed; the error in the air density is below 1 %.`,
    remedy: 'Nothing to do for a plan.',
  },
  'assumed-pressure/plan': {
    severity: 'note',
    source: standardAtmosphere,
    message: ({ pressure_Pa }: { pressure_Pa: number }) =>
      `The altitude is not known. A barometric pressure of ${plain(pressure_Pa, 0)} Pa is assumed.`,
    remedy: 'Enter the altitude of the site.',
  },
} as const satisfies FindingTexts
