import type { Direction } from '../../contract/record/index.js'
import { calibrationInterval, practiceSource } from '../sources.js'
import { apart, capital, dayInWords, plain, readingName } from '../words.js'
import type { FindingTexts } from './finding-text.js'

export interface DevicePlace {
  direction: Direction
  reading: number
  /** Index of the device, where several ran together. */
  device?: number | undefined
}

const place = ({ direction, reading, device }: DevicePlace): string =>
  `${readingName(direction, reading)}${device === undefined ? '' : `, device ${device + 1}`}`

export interface RangeLimits {
  range: string
  lowest: number
  /** Infinity where the range states none. */
  highest: number
}

const limits = ({ lowest, highest }: RangeLimits, unit: string): string =>
  Number.isFinite(highest)
    ? `${plain(lowest)} to ${plain(highest)} ${unit}`
    : `${plain(lowest)} ${unit} or more`

const changeRange = 'Change to the range that covers this flow and repeat the reading.'

/** Calibration, ranges and averaging of the instruments. */
export const instrumentTexts = {
  'calibration-expired/not-logged': {
    severity: 'caution',
    source: calibrationInterval,
    message: ({ instrument }: { instrument: string }) =>
      `The calibration due date of the ${instrument} was not logged.`,
    remedy: 'Enter the date from the calibration certificate.',
  },
  'calibration-expired/expired': {
    severity: 'caution',
    source: calibrationInterval,
    message: ({ instrument, due, test }: { instrument: string; due: string; test: string }) =>
      `Calibration of the ${instrument} expired on ${dayInWords(due)}, before the test on ${dayInWords(test)}.`,
    remedy: 'Have the instrument calibrated. Ask the certifying body whether the test is still valid.',
  },
  'device-range/none-fits': {
    severity: 'invalidates',
    source: practiceSource,
    message: ({ flow, ...at }: DevicePlace & { flow: number }) =>
      `${place(at)}: the air flow of ${plain(flow, 1)} m³/h is outside every calibrated range of the device.`,
    remedy: changeRange,
  },
  'device-range/pressure': {
    severity: 'invalidates',
    source: practiceSource,
    message: ({ pressure, ...at }: DevicePlace & RangeLimits & { pressure: number }) =>
      `${place(at)}: the device pressure of ${apart(pressure, [at.lowest, at.highest], 1)} Pa is outside the calibrated range "${at.range}" (${limits(at, 'Pa')}).`,
    remedy: changeRange,
  },
  'device-range/flow': {
    severity: 'invalidates',
    source: practiceSource,
    message: ({ flow, ...at }: DevicePlace & RangeLimits & { flow: number }) =>
      `${place(at)}: the air flow of ${apart(flow, [at.lowest, at.highest], 1)} m³/h is outside the calibrated range "${at.range}" (${limits(at, 'm³/h')}).`,
    remedy: changeRange,
  },
  'device-range/unknown': {
    severity: 'caution',
    source: practiceSource,
    message: ({ range, ...at }: DevicePlace & { range: string }) =>
      `${place(at)}: range "${range}" is not in the list of the device's ranges, so its limits were not checked.`,
    remedy: 'Add the range with its limits from the calibration certificate.',
  },
  'device-range/not-given': {
    severity: 'note',
    source: practiceSource,
    message: "The device's calibrated ranges were not given, so the flows were not checked against them.",
    remedy: 'Add the ranges from the calibration certificate.',
  },
  'instrument-accuracy': {
    severity: 'caution',
    message: ({
      instrument,
      unit,
      value,
      limit,
    }: {
      instrument: string
      unit: 'Pa' | '%' | 'K'
      value: number
      limit: number
    }) => {
      const shown = (one: number) => (unit === '%' ? `${plain(one * 100, 1)} %` : `${plain(one, 2)} ${unit}`)
      return `The ${instrument} is accurate to ±${shown(value)} (the method requires ±${shown(limit)}).`
    },
    remedy: 'Use a more accurate instrument, or explain in the report why this one is sufficient.',
  },
  'inside-pressure': {
    severity: 'caution',
    ofOneDirection: true,
    message: ({
      direction,
      difference,
      test,
      limit,
    }: {
      direction: Direction
      difference: number
      test: number
      limit: number
    }) =>
      `${capital(direction)}: at ${plain(test, 1)} Pa the inside pressures differ by ${apart(difference, [limit * test], 1)} Pa (limit ${plain(limit * test, 1)} Pa, which is ${plain(limit * 100)} % of the test pressure).`,
    remedy: 'Open internal doors, use more fans, or test parts of the building separately.',
  },
  'inside-pressure/not-read': {
    severity: 'note',
    message: ({ limit }: { limit: number }) =>
      `The building is large, but the inside pressure was not compared between storeys (they should agree within ${plain(limit * 100)} %).`,
    remedy: 'Read the pressure difference on several storeys at the same fan setting.',
  },
  'averaging-time/not-logged': {
    severity: 'caution',
    ofOneDirection: true,
    message: ({ direction, limit }: { direction: Direction; limit: number }) =>
      `${capital(direction)}: the averaging time was not logged (at least ${limit} s expected).`,
    remedy: ({ limit }: { limit: number }) => `Log the averaging time of the readings: ${limit} s or longer.`,
  },
  'averaging-time/short': {
    severity: 'caution',
    ofOneDirection: true,
    message: ({ direction, time, limit }: { direction: Direction; time: number; limit: number }) =>
      `${capital(direction)}: the readings were averaged over ${apart(time, [limit])} s (at least ${limit} s expected).`,
    remedy: ({ limit }: { limit: number }) => `Set the gauge to average over ${limit} s or longer.`,
  },
} as const satisfies FindingTexts
