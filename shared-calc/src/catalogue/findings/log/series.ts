import { apart, plain } from '../../words.js'
import type { RemarkTexts } from '../finding-text.js'
import { saying } from '../remark.js'

/** A figure of a raw series as findings print it: three significant digits. */
const brief = (value: number): string => plain(Number(value.toPrecision(3)), 12)

/** The same decimals for every reading, so that they compare down the list. */
const fixed = (value: number, decimals: number): string =>
  value
    .toFixed(decimals)
    .replace(/^-(?=0\.?0*$)/, '')
    .replace('-', '−')

export interface Averaged {
  samples: number
  mean: number
  deviation: number
  drift: number
  /** Undefined where too few samples are independent to tell. */
  uncertainty: number | undefined
  /** Few independent samples: the uncertainty may be too small. */
  few: boolean
  device: { mean: number; deviation: number; unit: 'm³/h' | 'Pa' }
}

/** What was averaged from a raw series, and what of it was not steady. */
export const seriesTexts = {
  'log-series-reading': {
    severity: 'note',
    message: ({ samples, mean, deviation, drift, uncertainty, few, device }: Averaged) =>
      `Mean of ${samples} samples: ${fixed(mean, 1)} Pa; standard deviation ${fixed(deviation, 2)} Pa; drift ${fixed(drift, 2)} Pa; standard uncertainty ${uncertainty === undefined ? 'unknown' : `${fixed(uncertainty, 2)} Pa`}. Flow device: ${fixed(device.mean, 1)} ${device.unit}, standard deviation ${fixed(device.deviation, 2)} ${device.unit}.${uncertainty === undefined ? ' Too few samples are independent.' : few ? ' Few samples are independent.' : ''}`,
  },
  'log-series-drift': {
    severity: 'caution',
    message: ({
      mean,
      drift,
      time_s,
      limit,
    }: {
      mean: number
      drift: number
      time_s: number
      limit: number
    }) =>
      `Near ${brief(mean)} Pa the pressure drifts by ${apart(drift, [limit], 1)} Pa in ${brief(time_s)} s (limit ${brief(limit)} Pa). No reading was taken there.`,
    remedy: 'Hold each pressure steady for longer.',
  },
  'log-series-short': {
    severity: 'caution',
    message: ({ mean, held_s, time_s }: { mean: number; held_s: number; time_s: number }) =>
      `Near ${brief(mean)} Pa the pressure is steady for only ${apart(held_s, [time_s], 0)} s (${brief(time_s)} s needed). No reading was taken there.`,
    remedy: 'Hold each pressure steady for longer.',
  },
  'log-series-no-zero-flow': {
    severity: 'caution',
    message: ({ which }: { which: 'before' | 'after' | 'before or after' }) =>
      `No steady zero-flow pressures were found ${which} the readings.`,
    remedy: 'Cover the fan and log at least 30 s before and after the readings.',
  },
  'log-series-slow': {
    severity: 'caution',
    message: ({ step_s }: { step_s: number }) =>
      `The log has only one sample every ${brief(step_s)} s, which is too few to show whether a pressure is steady.`,
    remedy: 'Log at least one sample a second.',
  },
  'log-series-gap': {
    severity: 'caution',
    message: ({ gap_s }: { gap_s: number }) =>
      `${brief(gap_s)} s are missing before this row. No reading is averaged across the gap.`,
    remedy: 'Check whether the gauge stopped logging, or rows were deleted.',
  },
  'log-series-zero-flow': {
    severity: 'note',
    message: ({ values, each_s }: { values: number; each_s: number }) =>
      values === 1
        ? `The zero-flow pressure is one mean over ${brief(each_s)} s.`
        : `The zero-flow pressures are ${values} means over ${brief(each_s)} s each.`,
  },
  'log-series-zero-short': {
    severity: 'caution',
    message: ({ held_s, needed_s }: { held_s: number; needed_s: number }) =>
      `The zero-flow pressure was logged for only ${apart(held_s, [needed_s], 0)} s (${needed_s} s needed).`,
    remedy: ({ needed_s }: { needed_s: number }) => `Log zero flow for at least ${needed_s} s.`,
  },
  'log-midnight': {
    severity: 'note',
    message: 'The clock passes midnight here. The times from here on are read as the next day.',
  },
} as const satisfies RemarkTexts

export const seriesText = saying(seriesTexts)
