import type { Direction } from '../../contract/record/index.js'
import { practiceSource } from '../sources.js'
import { apart, capital, counted, plain } from '../words.js'
import { changeOf, type LeakageChange } from './curve.js'
import type { FindingTexts } from './finding-text.js'

type Period = 'before' | 'after'

const logIt = ({
  period,
  samples,
  duration_s,
}: {
  period: Period
  samples: number
  duration_s: number
}): string =>
  `With the fan covered, log at least ${samples} zero-flow pressures over ${duration_s} s or longer ${period} the readings.`

/** Exponents of both runs as logged, and if the zero-flow pressures are read otherwise. */
export interface OtherFits {
  exponents: readonly [number, number]
  exponentsThen: readonly [number, number]
}

const fitBetter = ({ exponents: [one, other], exponentsThen: [oneThen, otherThen] }: OtherFits): string =>
  `If so, the readings lie closer to their curves, and the exponents agree better: ${plain(oneThen, 2)} and ${plain(otherThen, 2)} instead of ${plain(one, 2)} and ${plain(other, 2)}.`

/** Zero-flow pressures before and after the readings. */
export const zeroFlowTexts = {
  'zero-flow-limit/mean': {
    severity: 'invalidates',
    ofOneDirection: true,
    message: ({
      direction,
      period,
      mean,
      limit,
    }: {
      direction: Direction
      period: Period
      mean: number
      limit: number
    }) =>
      `${capital(direction)}: the mean of the ${mean > 0 ? 'positive' : 'negative'} zero-flow pressures ${period} the readings is ${apart(mean, [-limit, limit], 1)} Pa (limit ±${limit} Pa).`,
    remedy:
      'Wait for less wind or a smaller temperature difference. Check the hoses and their outdoor ends, then test again.',
  },
  'zero-flow-samples/none': {
    severity: 'invalidates',
    ofOneDirection: true,
    message: ({
      direction,
      period,
      instead,
    }: {
      direction: Direction
      period: Period
      instead: 'other period' | 'zero'
    }) =>
      `${capital(direction)}: the zero-flow pressure ${period} the readings was not logged. ${instead === 'zero' ? '0 Pa is used' : `The values ${period === 'before' ? 'after' : 'before'} the readings are used`} instead.`,
    remedy: logIt,
  },
  'zero-flow-samples/few': {
    severity: 'caution',
    ofOneDirection: true,
    message: ({
      direction,
      period,
      count,
      samples,
      duration_s,
    }: {
      direction: Direction
      period: Period
      count: number
      samples: number
      duration_s: number
    }) =>
      `${capital(direction)}: only ${counted(count, 'zero-flow pressure was', 'zero-flow pressures were')} logged ${period} the readings (at least ${samples} over ${duration_s} s expected).`,
    remedy: logIt,
  },
  'zero-flow-copied': {
    severity: 'caution',
    ofOneDirection: true,
    source: practiceSource,
    message: ({ direction, count }: { direction: Direction; count: number }) =>
      `${capital(direction)}: the ${count} zero-flow pressures after the readings are the same as those before them, in the same order. Measured values scatter, so one list is probably a copy of the other.`,
    remedy: 'Enter the values logged after the readings. If there are none, repeat the run.',
  },
  'zero-flow-all-zero': {
    severity: 'caution',
    source: practiceSource,
    message: ({ count }: { count: number }) =>
      `All ${count} zero-flow pressures are exactly 0 Pa. The readings show parts of a pascal, and a gauge that does so hardly ever shows 0 each time. The zero-flow pressure was probably not measured.`,
    remedy:
      'Enter the zero-flow pressures that were measured. If there are none, measure them with the fan covered and repeat the runs.',
  },
  'zero-flow-sign': {
    severity: 'caution',
    source: practiceSource,
    message: (fits: OtherFits) => `The zero-flow pressures probably have the wrong sign. ${fitBetter(fits)}`,
    remedy:
      'Check which hose was outdoors and which sign the log uses. Correct the signs and calculate again, or repeat the test.',
  },
  'zero-flow-subtracted': {
    severity: 'caution',
    source: practiceSource,
    message: (fits: OtherFits) =>
      `The zero-flow pressure was probably subtracted from the readings before they were logged. ${fitBetter(fits)}`,
    remedy:
      'Find out whether the gauge or the log subtracts the zero-flow pressure. Enter the readings as measured and calculate again, or repeat the test.',
  },
  'zero-flow-drift/run': {
    severity: 'note',
    ofOneDirection: true,
    source: practiceSource,
    message: ({
      direction,
      moved_Pa,
      share,
      limit,
    }: {
      direction: Direction
      moved_Pa: number
      share: number
      limit: number
    }) =>
      `${capital(direction)}: the zero-flow pressure changed by ${plain(moved_Pa, 1)} Pa during the run. The flow at the lowest reading may be wrong by ${apart(share * 100, [limit * 100], 1)} % (limit ${plain(limit * 100, 1)} %).`,
    remedy: 'Repeat the run in steadier weather. Check the hoses and their outdoor ends.',
  },
} as const satisfies FindingTexts

/** While the building is still prepared, a reading is best repeated at once. */
export const repeatNow =
  'Repeat this reading now, while the building is still prepared. Look for the cause (gust, door, wrong range).'

/** What a run shows while its readings come in. */
export const whileReadingTexts = {
  'zero-flow-drift': {
    severity: 'note',
    source: practiceSource,
    message: ({ moved_Pa, share, limit }: { moved_Pa: number; share: number; limit: number }) =>
      `The zero-flow pressure has changed by ${plain(moved_Pa, 1)} Pa. Because of this, the flow at the lowest reading may be wrong by ${apart(share * 100, [limit * 100], 1)} % (limit ${plain(limit * 100, 1)} %).`,
    remedy: 'Wait for steadier weather, then repeat the zero-flow pressure and the lowest readings.',
  },
  // Readings come in as they are taken: their order says when the leakage changed.
  'leakage-step/under-way': {
    severity: 'caution',
    source: practiceSource,
    message: (step: LeakageChange) =>
      `From reading ${step.reading + 1} on, the leakage is ${changeOf(step)}.`,
    remedy:
      'Check the range. Look for what opened or closed (tape, trap, door). Then set an earlier pressure again. If its flow has changed, begin the run again.',
  },
} as const satisfies FindingTexts
