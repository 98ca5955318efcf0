import type { Direction } from '../../contract/record/index.js'
import { practiceSource } from '../sources.js'
import { apart, counted, listed, plain } from '../words.js'
import type { FindingTexts } from './finding-text.js'

/** What the leak log leaves open or contradicts. */
export const leakTexts = {
  'leaks-too-large': {
    severity: 'note',
    source: practiceSource,
    message: ({ open, measured }: { open: number; measured: number }) =>
      `The open leaks add up to ${apart(open, [measured], 0)} cm², more than the measured leakage of ${apart(measured, [open], 0)} cm².`,
    remedy:
      'Sizes estimated by eye are rough. Check the largest leaks, and whether they lead outdoors at all.',
  },
  'leak-size': {
    severity: 'note',
    source: practiceSource,
    message: ({ count }: { count: number }) =>
      count === 1
        ? '1 leak has no size and is not included in any area.'
        : `${count} leaks have no size and are not included in any area.`,
    remedy: 'To include a leak, estimate its size.',
  },
  'leak-round/not-stated': {
    severity: 'note',
    source: practiceSource,
    message: ({ place }: { place: string }) =>
      `"${place}" is marked as fixed, but its repair round is not stated.`,
    remedy: 'State the repair round.',
  },
  'leak-round/not-fixed': {
    severity: 'note',
    source: practiceSource,
    message: ({ place }: { place: string }) => `"${place}" has a repair round but is not marked as fixed.`,
    remedy: 'Mark it as fixed, or remove the repair round.',
  },
  'leak-round/no-test': {
    severity: 'note',
    source: practiceSource,
    message: ({ place, round, earlier }: { place: string; round: number; earlier: number }) =>
      `"${place}" was fixed in round ${round}, but ${earlier === 0 ? 'no earlier test is' : `only ${counted(earlier, 'earlier test')} ${earlier === 1 ? 'is' : 'are'}`} entered.`,
    remedy: 'Enter the test made before that round.',
  },
  'round-directions/not-stated': {
    severity: 'note',
    source: practiceSource,
    message: ({ test }: { test: number }) =>
      `The directions of earlier test ${test + 1} are not stated. Part of the gain may be the difference between directions.`,
    remedy: 'Compare tests of the same directions.',
  },
  'round-directions/other': {
    severity: 'note',
    source: practiceSource,
    message: ({
      test,
      earlier,
      now,
    }: {
      test: number
      earlier: readonly Direction[]
      now: readonly Direction[]
    }) =>
      `Earlier test ${test + 1} was by ${listed(earlier)}, this one by ${listed(now)}. Part of the gain may be the difference between directions.`,
    remedy: 'Compare tests of the same directions.',
  },
  'round-grew': {
    severity: 'caution',
    source: practiceSource,
    message: ({ growth, round }: { growth: number; round: number }) =>
      `Leakage increased by ${plain(growth, 0)} m³/h in repair round ${round + 1}.`,
    remedy: 'Look for something opened or pierced since, or a difference in the preparation.',
  },
} as const satisfies FindingTexts
