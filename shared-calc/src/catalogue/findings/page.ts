import type { Direction } from '../../contract/record/index.js'
import { capital, counted, readingName } from '../words.js'
import type { RemarkTexts } from './finding-text.js'
import { saying } from './remark.js'

/** What is said about values typed on the page or picked in its workbook. */
export const pageTexts = {
  'reading-unfinished': {
    severity: 'note',
    message: ({ direction, reading }: { direction: Direction; reading: number }) =>
      `${readingName(direction, reading)} is not complete yet, so it is not used.`,
  },
  'run-unfinished': {
    severity: 'note',
    message: ({ direction, count, fewest }: { direction: Direction; count: number; fewest: number }) =>
      `${capital(direction)} has ${counted(count, 'reading')} so far. This method needs at least ${fewest}.`,
  },
  'part-unfinished': {
    severity: 'caution',
    message: ({ part, problem, more }: { part: string; problem: string; more: number }) =>
      `${capital(part)} is not complete, so it is not used: ${problem.replace(/\.$/, '')}${more > 0 ? ` (and ${more} more)` : ''}.`,
    remedy: 'Complete the entries, or remove them.',
  },
  'sign-by-direction': {
    severity: 'note',
    message: 'Depressurisation: pressures typed without a sign are taken as negative.',
  },
  'sign-by-direction/other': {
    severity: 'caution',
    message: ({ direction, reading }: { direction: Direction; reading: number }) =>
      `${readingName(direction, reading)} has the sign of the other direction.`,
    remedy: 'Check the direction of the run.',
  },
  'averaging-time': {
    severity: 'note',
    message: ({
      direction,
      series_s,
      typed_s,
    }: {
      direction: Direction
      series_s: number
      typed_s: string
    }) =>
      `The series of ${direction} was averaged over ${series_s} s. The ${typed_s} s typed in the form is not used for it.`,
  },
  'series-changed': {
    severity: 'caution',
    message: 'The cells of this series have changed, and the readings taken from it no longer match.',
    remedy: 'Read the series again.',
  },
} as const satisfies RemarkTexts

export const pageText = saying(pageTexts)
