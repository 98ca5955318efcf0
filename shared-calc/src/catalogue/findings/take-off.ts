import { practiceSource } from '../sources.js'
import { counted, plain } from '../words.js'
import type { FindingTexts } from './finding-text.js'

export interface StatedTotal {
  term: string
  unit: string
  from: string | undefined
  stated: number
  taken: number
  share: number
  limit: number
}

/** What a take-off leaves open or assumes, and where it differs from stated totals. */
export const takeOffTexts = {
  'take-off-empty': {
    severity: 'invalidates',
    source: practiceSource,
    message: ({ term, value, unit }: { term: string; value: number; unit: string }) =>
      `The ${term} is ${plain(value, 1)} ${unit}: more is subtracted than added.`,
    remedy: 'Check the dimensions of the excluded parts.',
  },
  'take-off-stated/differs': {
    severity: 'caution',
    source: practiceSource,
    message: ({ term, unit, from, stated, taken, share, limit }: StatedTotal) =>
      `The ${from === undefined ? `stated ${term}` : `${term} according to "${from}"`} is ${plain(stated, 1)} ${unit}; the take-off gives ${plain(taken, 1)} ${unit} (${plain(Math.abs(share) * 100, 1)} % ${share < 0 ? 'less' : 'more'}; uncertainty ±${plain(limit, 1)} ${unit}).`,
    remedy:
      'Check what the drawing includes and the take-off does not (basis, storeys, voids), or measure again.',
  },
  'take-off-stated/basis': {
    severity: 'note',
    source: practiceSource,
    message: 'The basis of the stated volume was not given. It is compared with the net volume.',
    remedy: 'Find out whether the stated volume is net or overall internal.',
  },
  'take-off-doubled': {
    severity: 'note',
    source: practiceSource,
    message: ({ name }: { name: string }) => `"${name}" is entered twice with the same dimensions.`,
    remedy: 'Leave one out, or give them different names.',
  },
  'assumed-length-uncertainty': {
    severity: 'note',
    source: practiceSource,
    message: ({ count, assumed_m }: { count: number; assumed_m: number }) =>
      `The uncertainty of ${counted(count, 'part')} was not stated. ${assumed_m} m is assumed for each length.`,
    remedy: 'State how accurately lengths were measured.',
  },
  'area-uncertainty-not-stated': {
    severity: 'note',
    source: practiceSource,
    message: ({ count }: { count: number }) =>
      `${counted(count, 'area')} ${count === 1 ? 'was' : 'were'} entered without an uncertainty. None is included.`,
    remedy: 'State the standard uncertainty of areas taken from a drawing.',
  },
  'scale-uncertainty-not-stated': {
    severity: 'note',
    source: practiceSource,
    message: 'No uncertainty common to all lengths (scale of a drawing, tape) was stated. None is included.',
    remedy: 'State it, especially if lengths were measured on a drawing.',
  },
  'take-off-used': {
    severity: 'caution',
    source: practiceSource,
    message: ({ term, unit, used, taken }: { term: string; unit: string; used: number; taken: number }) =>
      `The ${term} entered for the building is ${plain(used, 1)} ${unit}; the take-off gives ${plain(taken, 1)} ${unit}.`,
    remedy: 'Enter the figure from the take-off, or correct the take-off.',
  },
} as const satisfies FindingTexts
