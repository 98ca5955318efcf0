import { calibrationInterval, practiceSource } from '../sources.js'
import { apart, dayInWords, listed, plain } from '../words.js'
import type { FindingTexts } from './finding-text.js'

/** What prevents a planned test, or is assumed for it: pressures, devices, dates. */
export const planTexts = {
  'assumed-zero-flow': {
    severity: 'note',
    source: practiceSource,
    message: 'The zero-flow pressure is not known yet. 0 Pa is assumed for the pressures to set.',
    remedy: 'Read it on site with the fan covered, then plan again.',
  },
  'zero-flow-limit/plan': {
    severity: 'invalidates',
    message: ({ zeroFlow, limit }: { zeroFlow: number; limit: number }) =>
      `The zero-flow pressure is ${apart(zeroFlow, [-limit, limit], 1)} Pa (limit ±${limit} Pa). No pressures are proposed.`,
    remedy: 'Wait for less wind or a smaller temperature difference.',
  },
  'lowest-pressure/station': {
    severity: 'caution',
    message: ({ station, method, lowest }: { station: number; method: string; lowest: number }) =>
      `The reading at ${plain(station)} Pa (${method}) is below the lowest usable pressure of ${apart(lowest, [station], 1)} Pa, so it is not proposed.`,
    remedy: 'Wait for a smaller zero-flow pressure, or use a method with more pressures.',
  },
  'no-device': {
    severity: 'note',
    source: practiceSource,
    message: 'No flow device was entered, so the plan cannot check whether a device is powerful enough.',
    remedy: 'Enter the devices with the limits of their calibrated ranges.',
  },
  'range-limits-not-stated': {
    severity: 'caution',
    source: practiceSource,
    message: ({ count }: { count: number }) =>
      count === 1
        ? '1 range has no stated limits and is left out of the plan.'
        : `${count} ranges have no stated limits and are left out of the plan.`,
    remedy:
      'Enter the lowest and highest flow, or coefficient, exponent and pressures, from the calibration certificate.',
  },
  'device-reach/partly': {
    severity: 'caution',
    source: practiceSource,
    message: ({ best, missed }: { best: string; missed: readonly number[] }) =>
      `If the building just meets the target, no device covers every planned pressure. The best, "${best}", does not cover ${listed(
        missed.map((pressure) => plain(pressure, 0)),
        'or',
      )} Pa.`,
    remedy: 'Bring a device whose range covers the expected flows. A tight building needs a small one.',
  },
  'device-reach/none': {
    severity: 'caution',
    source: practiceSource,
    message: 'If the building just meets the target, no device covers any planned pressure.',
    remedy: 'Bring a device whose range covers the expected flows. A tight building needs a small one.',
  },
  'calibration-lapses/before-test': {
    severity: 'caution',
    source: calibrationInterval,
    message: ({ name, due, day }: { name: string; due: string; day: string }) =>
      `Calibration of "${name}" expires on ${dayInWords(due)}, before the test on ${dayInWords(day)}.`,
    remedy: 'Have it calibrated before the test, or bring another.',
  },
  'calibration-lapses/not-known': {
    severity: 'caution',
    source: calibrationInterval,
    message: ({ name }: { name: string }) => `The calibration due date of "${name}" is not known.`,
    remedy: 'Enter the date from the calibration certificate.',
  },
  'no-day': {
    severity: 'note',
    source: practiceSource,
    message: 'The date of the test is not known, so the calibration dates were not checked.',
    remedy: 'Enter the date of the test.',
  },
  'missing-target/plan': {
    severity: 'note',
    source: practiceSource,
    message: 'No target was set, so no expected flows are given.',
    remedy: 'Set the target that the project must meet.',
  },
  'missing-basis/plan': {
    severity: 'note',
    source: practiceSource,
    message:
      'The internal volume is not known, so the smallest n50 that each range can measure is not given.',
    remedy: 'Enter the volume, or the take-off that gives it.',
  },
} as const satisfies FindingTexts
