import type { Direction } from '../../contract/record/index.js'
import { practiceSource } from '../sources.js'
import { apart, capital, plain, readingName } from '../words.js'
import type { FindingTexts } from './finding-text.js'

const findCause =
  'Look for the cause (gust, door, wrong range) and repeat the reading. Never drop it without a reason.'

export interface LeakageStep extends LeakageChange {
  readonly direction: Direction
}

export interface LeakageChange {
  /** Index of the first reading after the change. */
  readonly reading: number
  readonly share: number
  readonly limit: number
}

/** How much the leakage changed, as the end of a sentence; the limit stands on the side of the change. */
export function changeOf({ share, limit }: LeakageChange): string {
  const [change, least] = [Math.abs(share) * 100, Math.abs(limit) * 100]
  return `${apart(change, [least], 1)} % ${share > 0 ? 'higher' : 'lower'} (limit ${apart(least, [change], 1)} %)`
}

/** What the leakage curve shows, and how the directions agree. */
export const curveTexts = {
  'exponent-range': {
    severity: 'invalidates',
    ofOneDirection: true,
    message: ({
      direction,
      exponent,
      lowest,
      highest,
    }: {
      direction: Direction
      exponent: number
      lowest: number
      highest: number
    }) =>
      `${capital(direction)}: the air flow exponent is ${apart(exponent, [lowest, highest], 3)}, outside ${lowest} to ${highest}.`,
    remedy: 'Look for an opening that moved during the run, a wrong range, or wind. Then repeat the run.',
  },
  correlation: {
    severity: 'invalidates',
    ofOneDirection: true,
    message: ({ direction, rSquared, limit }: { direction: Direction; rSquared: number; limit: number }) =>
      `${capital(direction)}: the coefficient of determination r² is ${apart(rSquared, [limit], 4)} (at least ${limit} needed).`,
    remedy: 'Repeat the run in calmer conditions, or repeat the readings that do not fit.',
  },
  'outlier/residual': {
    severity: 'note',
    source: practiceSource,
    message: ({
      direction,
      reading,
      residual,
      limit,
    }: {
      direction: Direction
      reading: number
      residual: number
      limit: number
    }) =>
      `${readingName(direction, reading)} does not fit the others (${apart(residual, [-limit, limit], 1)} standard deviations; limit ${apart(limit, [Math.abs(residual)], 1)}).`,
    remedy: findCause,
  },
  'outlier/others-exact': {
    severity: 'note',
    source: practiceSource,
    message: ({ direction, reading }: { direction: Direction; reading: number }) =>
      `${readingName(direction, reading)} does not fit the others, which lie exactly on one line.`,
    remedy: findCause,
  },
  'leakage-step/listed': {
    severity: 'caution',
    ofOneDirection: true,
    source: practiceSource,
    message: (step: LeakageStep) =>
      `${capital(step.direction)}: from reading ${step.reading + 1} on, the leakage is ${changeOf(step)}.`,
    remedy:
      'Look for what opened or closed, such as tape that came off or a dried-out trap, and check the zero-flow pressure. Then repeat the run.',
  },
  'leakage-step/by-pressure': {
    severity: 'caution',
    ofOneDirection: true,
    source: practiceSource,
    message: (step: LeakageStep & { readonly falling: boolean }) =>
      `${capital(step.direction)}: from reading ${step.reading + 1} on, at the ${step.falling ? 'lower' : 'higher'} pressures, the leakage is ${changeOf(step)}. A list sorted by pressure does not show when it changed.`,
    remedy:
      'Look for what opened or closed: tape, a trap, or a flap that moves with the pressure. Then repeat the run with high and low pressures in turn.',
  },
  'leakage-step/range': {
    severity: 'caution',
    ofOneDirection: true,
    source: practiceSource,
    message: (step: LeakageStep) =>
      `${capital(step.direction)}: from reading ${step.reading + 1} on, where the range of the flow device changes, the leakage is ${changeOf(step)}.`,
    remedy:
      'Check that each reading names the right range, and the calibration. Then look for what opened or closed, such as tape that came off, and repeat the run.',
  },
  'extrapolated-target': {
    severity: 'note',
    ofOneDirection: true,
    source: practiceSource,
    message: ({
      direction,
      pressure_Pa,
      lowest,
      highest,
    }: {
      direction: Direction
      pressure_Pa: number
      lowest: number
      highest: number
    }) =>
      `${capital(direction)}: the target applies at ${plain(pressure_Pa)} Pa, outside the pressures measured (${apart(lowest, [pressure_Pa], 1)} to ${apart(highest, [pressure_Pa], 1)} Pa).`,
    remedy: 'Check the confidence interval: it widens outside the pressures measured.',
  },
  'one-direction/both-needed': {
    severity: 'invalidates',
    source: practiceSource,
    message: ({ direction }: { direction: Direction }) =>
      `Only ${direction} was measured; the target needs both directions.`,
    remedy: 'Turn the flow device round and measure the other direction.',
  },
  'one-direction/alone': {
    severity: 'note',
    source: practiceSource,
    message: ({ direction }: { direction: Direction }) =>
      `Only ${direction} was measured. The results are for this direction alone.`,
    remedy: 'Turn the flow device round and measure the other direction.',
  },
  'both-directions': {
    severity: 'invalidates',
    message: ({ direction, method }: { direction: Direction; method: string }) =>
      `Only ${direction} was measured; ${method} requires both directions.`,
    remedy: 'Turn the flow device round and measure the other direction.',
  },
  'method-direction': {
    severity: 'caution',
    message: ({ method, asked, direction }: { method: string; asked: Direction; direction: Direction }) =>
      `${method} tests by ${asked} only. This run is by ${direction}; it is included in the mean.`,
    remedy: 'Leave the run out, or choose a method that uses both directions.',
  },
  'directions-differ': {
    severity: 'note',
    message: ({ share, limit }: { share: number; limit: number }) =>
      `At 50 Pa the air leakage rates of the two directions differ by ${apart(share * 100, [limit * 100], 0)} % of their mean (limit ${plain(limit * 100, 0)} %).`,
    remedy:
      'Look for the cause: a flap or membrane that closes in one direction, or a change between the runs.',
  },
  'leakage-area-error': {
    severity: 'invalidates',
    ofOneDirection: true,
    message: ({
      direction,
      pressure_Pa,
      error,
      limit,
    }: {
      direction: Direction
      pressure_Pa: number
      error: number
      limit: number
    }) =>
      `${capital(direction)}: the leakage area at ${pressure_Pa} Pa has a relative standard error of ${apart(error * 100, [limit * 100], 1)} % (limit ${plain(limit * 100, 1)} %).`,
    remedy: 'Repeat the run in calmer weather, or with more readings at low pressure.',
  },
} as const satisfies FindingTexts
